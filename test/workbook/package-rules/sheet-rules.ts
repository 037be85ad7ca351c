import { all, block, child, children, overlapping, place, repeated, type Package, type Part } from "./package";
import { isRange, orderProblems } from "./rules";

/** Part 1, 18.3.1.99, the elements of it that we write and those between them. */
const worksheetOrder = [
  "sheetPr", "dimension", "sheetViews", "sheetFormatPr", "cols", "sheetData", "sheetCalcPr", "sheetProtection", "autoFilter", "mergeCells", "conditionalFormatting",
  "dataValidations", "hyperlinks", "printOptions", "pageMargins", "pageSetup", "headerFooter", "rowBreaks", "colBreaks", "drawing", "legacyDrawing", "tableParts", "extLst",
];

export function sheetProblems(book: Package, { path, xml }: Part): readonly string[] {
  const say = (text: string): string => `${path}: ${text}`;
  const rows = children(child(xml, "sheetData"));
  const cells = rows.flatMap((row) => children(row));
  const sizes = sizesOf(book);
  return [
    ...orderProblems(path, xml, worksheetOrder),
    ...[...cellOrder(rows), ...cells.flatMap((cell) => cellProblems(sizes, cell)), ...arrays(cells), ...columns(xml), ...merges(xml, cells), ...lists(xml), ...page(xml)].map(say),
  ];
}

/** How many of each thing there are that a cell can refer to. */
interface Sizes {
  readonly looks: number;
  readonly texts: number;
  readonly marks: number;
}

const sizesOf = (book: Package): Sizes => ({
  looks: child(book.xml("xl/styles.xml"), "cellXfs")?.childElementCount ?? 0,
  texts: book.xml("xl/sharedStrings.xml").childElementCount,
  marks: child(book.xml("xl/metadata.xml"), "cellMetadata")?.childElementCount ?? 0,
});

/** 18.3.1.73 and 18.3.1.4: rows and the cells in them go upwards, each in its row. */
function cellOrder(rows: readonly Element[]): readonly string[] {
  const numbers = rows.map((row) => Number(row.getAttribute("r")));
  return [
    ...numbers.filter((number, index) => index > 0 && number <= (numbers[index - 1] ?? 0)).map((number) => `row ${number} comes too late.`),
    ...rows.flatMap((row) => {
      const places = children(row).map((cell) => place(cell.getAttribute("r") ?? ""));
      const addresses = children(row).map((cell) => cell.getAttribute("r") ?? "");
      return addresses.filter((_, index) => {
        const here = places[index];
        const before = places[index - 1];
        return !here || here.row !== Number(row.getAttribute("r")) - 1 || (index > 0 && before !== undefined && here.column <= before.column);
      }).map((address) => `cell ${address} is not where it should be.`);
    }),
  ];
}

/** The errors of 18.18.11 that a file may hold as a value. */
const errors = ["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A", "#GETTING_DATA"];

function cellProblems({ looks, texts, marks }: Sizes, cell: Element): readonly string[] {
  const address = cell.getAttribute("r") ?? "";
  const type = cell.getAttribute("t") ?? "n";
  const value = child(cell, "v")?.textContent ?? undefined;
  const formula = child(cell, "f");
  const valueProblem =
    value === undefined ? undefined
    : type === "s" && !(Number(value) < texts) ? `refers to text ${value} of ${texts}`
    : type === "n" && !Number.isFinite(Number(value)) ? `is no number: ${value}`
    : type === "b" && value !== "0" && value !== "1" ? `is neither true nor false: ${value}`
    : type === "e" && !errors.includes(value) ? `holds an error that files do not: ${value}`
    : value.length > 32_767 ? "holds too long a text" : undefined;
  return [
    ...(valueProblem === undefined ? [] : [`${address} ${valueProblem}.`]),
    ...(Number(cell.getAttribute("s") ?? 0) < looks ? [] : [`${address} refers to a look that is not there.`]),
    ...orderProblems(address, cell, ["f", "v", "is"]),
    ...(formula ? formulaProblems(address, formula.textContent ?? "") : []),
    ...metadataProblems(marks, cell, formula),
  ];
}

function formulaProblems(address: string, text: string): readonly string[] {
  const bare = text.replace(/"(?:[^"]|"")*"/g, '""');
  return [
    ...(text.startsWith("=") ? [`${address} has a formula with "=".`] : []),
    ...(text.length > 8192 ? [`${address} has too long a formula.`] : []),
    ...(/\bPLUMB[.]/i.test(bare) ? [`${address} calls a function of ours by the name people type.`] : []),
    ...(/(?<![\w.])(XLOOKUP|FILTER|SORT|UNIQUE|LET|SEQUENCE|TEXTJOIN|IFS)\(/.test(bare) ? [`${address} calls a newer function without its prefix.`] : []),
    ...(/\[@|\w#(?!\w)/.test(bare) ? [`${address} has a reference as people type it, not as files hold it.`] : []),
  ];
}

/** 18.9.4: cm counts from 1 in cellMetadata, and only the first cell of a dynamic array has it. */
function metadataProblems(marks: number, cell: Element, formula: Element | undefined): readonly string[] {
  const mark = cell.getAttribute("cm");
  if (mark === null) return [];
  const address = cell.getAttribute("r") ?? "";
  return [
    ...(Number(mark) >= 1 && Number(mark) <= marks ? [] : [`${address} has metadata ${mark} of ${marks}.`]),
    ...(formula?.getAttribute("t") === "array" ? [] : [`${address} is marked as an array and is none.`]),
  ];
}

/** 18.3.1.40: an array starts at its cell, fills cells without formulas of their own that carry their values, and no two overlap. */
function arrays(cells: readonly Element[]): readonly string[] {
  const byAddress = new Map(cells.map((cell) => [cell.getAttribute("r") ?? "", cell]));
  const found = cells.flatMap((cell) => {
    const formula = child(cell, "f");
    const range = formula?.getAttribute("t") === "array" ? formula.getAttribute("ref") ?? "" : undefined;
    return range === undefined ? [] : [{ address: cell.getAttribute("r") ?? "", range, block: block(range) ?? { top: -1, left: -1, bottom: -1, right: -1 } }];
  });
  const startsElsewhere = found.filter(({ address, range }) => !range.startsWith(address) || !isRange(range)).map(({ address }) => `the array of ${address} does not start there.`);
  const filled = found.flatMap(({ address, block: { top, left, bottom, right } }) => [...byAddress].filter(([other, cell]) => {
    const at = place(other);
    return other !== address && at && at.row >= top && at.row <= bottom && at.column >= left && at.column <= right && child(cell, "f");
  }).map(([other]) => `${other} has a formula inside the array of ${address}.`));
  return [...startsElsewhere, ...filled, ...overlapping(found).map(([a, b]) => `the arrays of ${a.address} and ${b.address} overlap.`)];
}

/** 18.3.1.13: columns go upwards and do not overlap. */
function columns(xml: Element): readonly string[] {
  const spans = children(child(xml, "cols")).map((column) => [Number(column.getAttribute("min")), Number(column.getAttribute("max"))] as const);
  return spans.filter(([min, max], index) => min < 1 || max < min || max > 16_384 || (index > 0 && min <= (spans[index - 1]?.[1] ?? 0))).map(([min]) => `column ${min} is out of order.`);
}

/** 18.3.1.55: merged cells do not overlap, and only the first of them holds something. */
function merges(xml: Element, cells: readonly Element[]): readonly string[] {
  const found = all(xml, "mergeCell").map((each) => ({ range: each.getAttribute("ref") ?? "", block: block(each.getAttribute("ref") ?? "") }));
  const known = found.flatMap(({ range, block: area }) => (area ? [{ range, block: area }] : []));
  const count = child(xml, "mergeCells")?.getAttribute("count");
  const hidden = known.flatMap(({ range, block: area }) => cells.filter((cell) => {
    const at = place(cell.getAttribute("r") ?? "");
    return at && at.row >= area.top && at.row <= area.bottom && at.column >= area.left && at.column <= area.right && !(at.row === area.top && at.column === area.left) && child(cell, "v");
  }).map((cell) => `${cell.getAttribute("r") ?? ""} is hidden in the merged ${range}.`));
  return [
    ...found.filter(({ block: area }) => !area).map(({ range }) => `${range} cannot be merged.`),
    ...overlapping(known).map(([a, b]) => `the merged ${a.range} and ${b.range} overlap.`),
    ...(count === undefined || count === String(found.length) ? [] : ["the merged cells are miscounted."]), ...hidden,
  ];
}

/** 18.3.1.32; a list between quotes has at most 255 characters, a title 32, a message 255. */
function lists(xml: Element): readonly string[] {
  const rules = all(xml, "dataValidation");
  const ranges = rules.flatMap((rule) => (rule.getAttribute("sqref") ?? "").split(" "));
  return [
    ...ranges.filter((range) => !isRange(range)).map((range) => `a list is for "${range}".`),
    ...repeated(ranges).map((range) => `two lists are for ${range}.`),
    ...rules.filter((rule) => (rule.getAttribute("errorTitle") ?? "").length > 32 || (rule.getAttribute("error") ?? "").length > 255).map(() => "the words of a list are too long."),
    ...rules.map((rule) => child(rule, "formula1")?.textContent ?? "").filter((list) => !/^"[^"]*(?:""[^"]*)*"$/.test(list) || list.length > 257).map((list) => `a list is no list: ${list}`),
  ];
}

/** 18.3.1.62 and 18.3.1.63: all margins; 18.3.1.65: fitting needs its mark in sheetPr, which says that it is not a scale. */
function page(xml: Element): readonly string[] {
  const margins = child(xml, "pageMargins");
  const missing = ["left", "right", "top", "bottom", "header", "footer"].filter((side) => margins && !(Number(margins.getAttribute(side)) > 0));
  const fits = all(xml, "pageSetUpPr").some((each) => each.getAttribute("fitToPage") === "1");
  const foot = all(xml, "oddFooter")[0]?.textContent ?? "";
  return [
    ...missing.map((side) => `there is no margin ${side}.`),
    ...(child(xml, "pageSetup")?.hasAttribute("fitToWidth") && !fits ? ["the page does not say that it fits."] : []),
    ...(foot.length > 255 ? ["the foot of the page is too long."] : []),
    ...(/&(?![LCRPNDTFAGKUSEXYBIO"\d+-])/.test(foot.replaceAll("&&", "")) ? [`the foot of the page has a code that is none: ${foot}`] : []),
  ];
}
