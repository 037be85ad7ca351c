import { all, child, children, type Package } from "./package";
import { orderProblems } from "./rules";

/** Part 1, 18.8.39. */
const styleOrder = ["numFmts", "fonts", "fills", "borders", "cellStyleXfs", "cellXfs", "cellStyles", "dxfs", "tableStyles", "colors", "extLst"];

/** Numbers below are kept for formats that files name by number only (18.8.30). */
const FIRST_OWN_FORMAT = 164;

export function styleProblems(book: Package): readonly string[] {
  const styles = book.xml("xl/styles.xml");
  const own = all(styles, "numFmt").map((format) => Number(format.getAttribute("numFmtId")));
  const sizes = { fontId: count(styles, "fonts"), fillId: count(styles, "fills"), borderId: count(styles, "borders"), xfId: count(styles, "cellStyleXfs") };
  const looks = children(child(styles, "cellXfs"));
  return [
    ...orderProblems("xl/styles.xml", styles, styleOrder),
    ...children(styles).filter((list) => list.getAttribute("count") !== String(children(list).length)).map(({ localName }) => `${localName} of the styles are miscounted.`),
    ...looks.flatMap((look, index) => Object.entries(sizes).filter(([name, size]) => !(Number(look.getAttribute(name) ?? 0) < size)).map(([name]) => `Look ${index} has no such ${name}.`)),
    ...looks.map((look) => Number(look.getAttribute("numFmtId") ?? 0)).filter((number) => number >= FIRST_OWN_FORMAT && !own.includes(number)).map((number) => `Number format ${number} is not there.`),
    ...own.filter((number) => number < FIRST_OWN_FORMAT).map((number) => `Number format ${number} is one of the format's own.`),
    ...reservedFills(styles),
    ...children(child(styles, "borders")).flatMap((border) => orderProblems("A border", border, ["left", "right", "top", "bottom", "diagonal"])),
    ...all(styles, "color").map((color) => color.getAttribute("rgb")).filter((rgb) => rgb !== null && !/^[0-9A-F]{8}$/.test(rgb)).map((rgb) => `${String(rgb)} is no colour.`),
  ];
}

const count = (styles: Element, name: string): number => children(child(styles, name)).length;

/** Programs take the first two fills for none and for a grey pattern, whatever they are. */
function reservedFills(styles: Element): readonly string[] {
  const [none, grey] = all(styles, "patternFill").map((fill) => fill.getAttribute("patternType"));
  return none === "none" && grey === "gray125" ? [] : ["The first two fills are not the reserved ones."];
}
