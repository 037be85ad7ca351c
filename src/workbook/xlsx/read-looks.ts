import { builtInFormats } from "./number-formats";
import { childNamed, childrenNamed, isOn, type XmlElement } from "./xml-tree";

/** What a cell's style says that we keep: a number format code, "" for General, and bold or not. */
export interface CellLook {
  readonly format: string;
  readonly bold: boolean;
}

/** The looks by the number under which cells refer to them. */
export function readLooks(styles: XmlElement | undefined): readonly CellLook[] {
  const own = new Map(
    childrenNamed(childNamed(styles, "numFmts"), "numFmt").map(({ attributes }) => [Number(attributes["numFmtId"]), attributes["formatCode"] ?? ""]),
  );
  const boldFonts = childrenNamed(childNamed(styles, "fonts"), "font").map(isBold);
  return childrenNamed(childNamed(styles, "cellXfs"), "xf").map(({ attributes }) => {
    const number = Number(attributes["numFmtId"] ?? 0);
    const code = own.get(number) ?? builtInFormats[number] ?? "";
    return { format: code.toLowerCase() === "general" ? "" : code, bold: boldFonts[Number(attributes["fontId"] ?? 0)] ?? false };
  });
}

function isBold(font: XmlElement): boolean {
  const mark = childNamed(font, "b");
  return mark !== undefined && isOn(mark.attributes["val"] ?? "1");
}
