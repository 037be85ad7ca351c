import { mainNamespace, xmlHead, xmlText } from "./xml-text";
import { builtInFormats } from "./number-formats";

/** The looks that cells have, each once. Look 0 is the plain one. */
export class CellStyles {
  readonly #looks = new Map<string, { readonly format: string; readonly bold: boolean }>([["|false", { format: "", bold: false }]]);

  /** Number under which a cell refers to the look. */
  number(format: string, bold: boolean): number {
    const key = `${format}|${String(bold)}`;
    if (!this.#looks.has(key)) this.#looks.set(key, { format, bold });
    return [...this.#looks.keys()].indexOf(key);
  }

  xml(): string {
    const own = [...new Set([...this.#looks.values()].map(({ format }) => format))].filter((format) => format !== "" && builtIn(format) === undefined);
    const numberOf = (format: string): number => (format === "" ? 0 : (builtIn(format) ?? firstOwnFormat + own.indexOf(format)));
    const formats = own.map((format) => `<numFmt numFmtId="${String(numberOf(format))}" formatCode="${xmlText(format)}"/>`);
    const looks = [...this.#looks.values()].map(
      ({ format, bold }) =>
        `<xf numFmtId="${String(numberOf(format))}" fontId="${bold ? "1" : "0"}" fillId="0" borderId="0" xfId="0"` +
        `${format === "" ? "" : ' applyNumberFormat="1"'}${bold ? ' applyFont="1"' : ""}/>`,
    );
    return (
      `${xmlHead}<styleSheet xmlns="${mainNamespace}">` +
      (formats.length > 0 ? `<numFmts count="${String(formats.length)}">${formats.join("")}</numFmts>` : "") +
      `<fonts count="2"><font>${font}</font><font><b/>${font}</font></fonts>` +
      '<fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills>' +
      "<borders count=\"1\"><border><left/><right/><top/><bottom/><diagonal/></border></borders>" +
      '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>' +
      `<cellXfs count="${String(looks.length)}">${looks.join("")}</cellXfs>` +
      '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>'
    );
  }
}

/** Numbers below are the format's own list. */
const firstOwnFormat = 164;
const font = '<sz val="11"/><name val="Calibri"/><family val="2"/>';

function builtIn(format: string): number | undefined {
  const found = Object.entries(builtInFormats).find(([, code]) => code === format);
  return found ? Number(found[0]) : undefined;
}
