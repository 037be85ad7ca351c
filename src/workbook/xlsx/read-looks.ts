/** Reads the looks of cells from the styles part. */
import { type CellStyle } from "../document";
import { builtInFormats } from "./number-formats";
import { childNamed, childrenNamed, isOn, type XmlElement } from "./xml-tree";

/** The looks by the number under which cells refer to them. Colours of a theme are left out: they name no colour. */
export function readLooks(styles: XmlElement | undefined): readonly CellStyle[] {
  const own = new Map(
    childrenNamed(childNamed(styles, "numFmts"), "numFmt").map(({ attributes }) => [Number(attributes["numFmtId"]), attributes["formatCode"] ?? ""]),
  );
  const fontElements = childrenNamed(childNamed(styles, "fonts"), "font");
  const fonts = fontElements.map((font) => fontLook(font, sizeOf(fontElements[0])));
  const fills = childrenNamed(childNamed(styles, "fills"), "fill").map(fillLook);
  const borders = childrenNamed(childNamed(styles, "borders"), "border").map(borderLook);
  return childrenNamed(childNamed(styles, "cellXfs"), "xf").map((look) => ({
    ...formatLook(own, number(look, "numFmtId")),
    ...fonts[number(look, "fontId")],
    ...fills[number(look, "fillId")],
    ...borders[number(look, "borderId")],
    ...alignmentLook(childNamed(look, "alignment")),
  }));
}

const number = ({ attributes }: XmlElement, name: string): number => Number(attributes[name] ?? 0);

function formatLook(own: ReadonlyMap<number, string>, format: number): CellStyle {
  const code = own.get(format) ?? builtInFormats[format] ?? "";
  return code === "" || code.toLowerCase() === "general" ? {} : { format: code };
}

/** The size of the workbook's first font is the plain one, so it is no look. */
function fontLook(font: XmlElement, plain: number | undefined): CellStyle {
  const size = sizeOf(font);
  const colour = colourOf(childNamed(font, "color"));
  return {
    ...(isMarked(font, "b") ? { bold: true } : {}),
    ...(isMarked(font, "i") ? { italic: true } : {}),
    ...(size === undefined || size === plain ? {} : { size }),
    ...(colour === undefined ? {} : { colour }),
  };
}

function isMarked(font: XmlElement, name: string): boolean {
  const mark = childNamed(font, name);
  return mark !== undefined && isOn(mark.attributes["val"] ?? "1");
}

function sizeOf(font: XmlElement | undefined): number | undefined {
  const size = Number(childNamed(font, "sz")?.attributes["val"]);
  return size > 0 ? size : undefined;
}

function fillLook(fill: XmlElement): CellStyle {
  const pattern = childNamed(fill, "patternFill");
  const colour = pattern?.attributes["patternType"] === "solid" ? colourOf(childNamed(pattern, "fgColor")) : undefined;
  return colour === undefined ? {} : { fill: colour };
}

function borderLook(border: XmlElement): CellStyle {
  const isRuled = (side: string): boolean => (childNamed(border, side)?.attributes["style"] ?? "none") !== "none";
  return { ...(isRuled("top") ? { top: true } : {}), ...(isRuled("bottom") ? { bottom: true } : {}) };
}

function alignmentLook(alignment: XmlElement | undefined): CellStyle {
  const { horizontal, wrapText } = alignment?.attributes ?? {};
  const align = horizontal === "left" || horizontal === "center" || horizontal === "right" ? { align: horizontal } as const : {};
  return { ...align, ...(isOn(wrapText) ? { wrap: true } : {}) };
}

/** "FF0A0B0C" and "0A0B0C" read "#0a0b0c". */
function colourOf(colour: XmlElement | undefined): string | undefined {
  const digits = /^(?:[0-9a-f]{2})?([0-9a-f]{6})$/i.exec(colour?.attributes["rgb"] ?? "")?.[1];
  return digits === undefined ? undefined : `#${digits.toLowerCase()}`;
}
