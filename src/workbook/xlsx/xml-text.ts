/** Text for an XML element or attribute; characters that XML cannot hold are written as files of Excel do, _x0007_. */
export const xmlText = (text: string): string =>
  text
    .replace(/_x([0-9A-F]{4})_/gi, "_x005F_x$1_")
    // eslint-disable-next-line no-control-regex -- these are the characters XML 1.0 forbids
    .replace(/[\u0000-\u0008\u000B\u000C\u000D\u000E-\u001F\uFFFE\uFFFF]/g, (character) => `_x${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`)
    .replace(/[&<>"]/g, (character) => entities[character] ?? character);

/** The other way, for text read from a part whose XML entities the parser has resolved. */
export const fromXmlText = (text: string): string =>
  text.replace(/_x([0-9A-F]{4})_/gi, (_, code: string) => String.fromCharCode(parseInt(code, 16)));

export const xmlHead = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';

export const mainNamespace = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const relationshipNamespace = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

const entities: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };
