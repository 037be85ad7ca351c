/** Writes the styles part, each look once. */
import { type CellStyle } from "../document";
import { mainNamespace, xmlHead, xmlText } from "./xml-text";
import { builtInFormats } from "./number-formats";

/** The looks that cells have, each once, and the fonts, fills and borders of them. Look 0 is the plain one. */
export class CellStyles {
  readonly #looks = numbering();
  readonly #fonts = numbering();
  // The first two fills are the format's own, whatever a file says of them.
  readonly #fills = numbering(['<fill><patternFill patternType="none"/></fill>', '<fill><patternFill patternType="gray125"/></fill>']);
  readonly #borders = numbering();
  readonly #formats = numbering();

  constructor() {
    this.number({});
  }

  /** Number under which a cell refers to the look. */
  number(style: CellStyle): number {
    const { format = "" } = style;
    const formatNumber = format === "" ? 0 : (builtIn(format) ?? firstOwnFormat + this.#formats.number(format));
    const font = this.#fonts.number(fontXml(style));
    const fill = style.fill === undefined ? 0 : this.#fills.number(fillXml(style.fill));
    const border = this.#borders.number(borderXml(style));
    const alignment = alignmentXml(style);
    return this.#looks.number(
      `<xf numFmtId="${String(formatNumber)}" fontId="${String(font)}" fillId="${String(fill)}" borderId="${String(border)}" xfId="0"` +
        `${applied("NumberFormat", formatNumber)}${applied("Font", font)}${applied("Fill", fill)}${applied("Border", border)}` +
        (alignment === "" ? "/>" : ` applyAlignment="1">${alignment}</xf>`),
    );
  }

  xml(): string {
    const formats = this.#formats.all().map((format, index) => `<numFmt numFmtId="${String(firstOwnFormat + index)}" formatCode="${xmlText(format)}"/>`);
    return (
      `${xmlHead}<styleSheet xmlns="${mainNamespace}">` +
      (formats.length > 0 ? listed("numFmts", formats) : "") +
      listed("fonts", this.#fonts.all()) +
      listed("fills", this.#fills.all()) +
      listed("borders", this.#borders.all()) +
      '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>' +
      listed("cellXfs", this.#looks.all()) +
      '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>'
    );
  }
}

/** Each different text with the number of its first use. */
function numbering(first: readonly string[] = []) {
  const numbers = new Map(first.map((text, index) => [text, index]));
  return {
    number: (text: string): number => {
      const number = numbers.get(text) ?? numbers.size;
      numbers.set(text, number);
      return number;
    },
    all: (): readonly string[] => [...numbers.keys()],
  };
}

const listed = (name: string, items: readonly string[]): string => `<${name} count="${String(items.length)}">${items.join("")}</${name}>`;
const applied = (what: string, number: number): string => (number === 0 ? "" : ` apply${what}="1"`);

/** Numbers below are the format's own list. */
const firstOwnFormat = 164;

/** Points; what a new workbook has. */
export const plainSize = 11;

const fontXml = ({ bold, italic, size = plainSize, colour }: CellStyle): string =>
  `<font>${bold ? "<b/>" : ""}${italic ? "<i/>" : ""}<sz val="${String(size)}"/>${colour === undefined ? "" : `<color rgb="${opaque(colour)}"/>`}<name val="Calibri"/><family val="2"/></font>`;

const fillXml = (fill: string): string => `<fill><patternFill patternType="solid"><fgColor rgb="${opaque(fill)}"/><bgColor indexed="64"/></patternFill></fill>`;

const borderXml = ({ top, bottom }: CellStyle): string => `<border><left/><right/>${rule("top", top)}${rule("bottom", bottom)}<diagonal/></border>`;
const rule = (side: string, isThere: boolean | undefined): string => (isThere ? `<${side} style="thin"><color auto="1"/></${side}>` : `<${side}/>`);

/** Wrapped text stands at the top of its row, as it is read. */
const alignmentXml = ({ align, wrap }: CellStyle): string =>
  align === undefined && !wrap ? "" : `<alignment${align === undefined ? "" : ` horizontal="${align}"`}${wrap ? ' vertical="top" wrapText="1"' : ""}/>`;

/** "#rrggbb" as a file says it, with how much shows through first. */
const opaque = (colour: string): string => `FF${colour.slice(1).toUpperCase()}`;

function builtIn(format: string): number | undefined {
  const found = Object.entries(builtInFormats).find(([, code]) => code === format);
  return found ? Number(found[0]) : undefined;
}
