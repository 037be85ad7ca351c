/** A grid that keeps what it calculated beside one whose library calculates everything anew: nobody must see a difference. */
import fc from "fast-check";
import { gridLibrary as library } from "../../scripts/grid-library";
import { type GridModel } from "../../src/embedded/grid/library";
import { modelData } from "../../src/embedded/grid/model-data";
import { cellAddress, parseCellAddress } from "../../src/workbook/address";
import { type WorkbookDocument } from "../../src/workbook/document";
import { openDocument, plainSheet, tableSheet } from "../embedded/sample";
import { hardUse } from "./rows";

/** With nine columns, enough cells for a range to be kept. */
const LONG = 120;
const COLUMNS = 9;
const document: WorkbookDocument = {
  sheets: [
    tableSheet({ name: "Long", rows: [["N", "Text", "C", "D", "E", "F", "G", "H", "I"], ...Array.from({ length: LONG - 1 }, (_, row) => [row, `t${row}`, "", 1, "", "", "", "", ""])] }),
    plainSheet("Work", { A1: "=TEST.ECHO(Long!A1:C120)", F2: "=SUM(Long!A1:I120)", G2: "=A1:C9", H2: "=SUM(Work!A1:I119)" }),
    plainSheet("More", { A1: "=COUNTA(Work!A1:I120)", B1: "=MUNIT(3)" }),
  ],
};

const { coreViewsPluginRegistry, statefulUIPluginRegistry } = library.registries;
const plugins = [[coreViewsPluginRegistry, "evaluation"], [statefulUIPluginRegistry, "header_positions"], [statefulUIPluginRegistry, "table_computed_style"]] as const;
const originals = plugins.map(([registry, name]) => registry.get(name));

/** The one that keeps first: it is what registers our functions. */
function pair(): readonly [GridModel, GridModel] {
  const { model } = openDocument(document);
  const keeping = plugins.map(([registry, name]) => registry.get(name));
  const put = (these: readonly unknown[]): void => { plugins.forEach(([registry, name], index) => registry.replace(name, these[index] as never)); };
  put(originals);
  const plain = new library.Model(modelData(library, document), {}, [], undefined, false);
  put(keeping);
  return [model, plain];
}

/** The places where the two differ in a cell's content or look, or in where a row begins. */
function differences(kept: GridModel, plain: GridModel): readonly string[] {
  const found: string[] = [];
  const sheets = plain.getters.getSheetIds();
  expect(kept.getters.getSheetIds()).toEqual(sheets);
  for (const sheetId of sheets) {
    const rows = plain.getters.getNumberRows(sheetId);
    if (rows !== kept.getters.getNumberRows(sheetId)) found.push(`rows of ${sheetId}`);
    for (let row = 0; row < rows; row++) {
      const [ours, theirs] = [kept, plain].map(({ getters }) => getters.getRowDimensions(sheetId, row));
      if (ours?.start !== theirs?.start || ours?.end !== theirs?.end) found.push(`${sheetId} row ${row + 1}`);
      for (let col = 0; col < COLUMNS; col++) {
        const [own, other] = [kept, plain].map(({ getters }) => getters.getEvaluatedCell({ sheetId, col, row }) as unknown as Readonly<Record<string, unknown>>);
        if (parts.some((part) => own?.[part] !== other?.[part])) found.push(`${sheetId}!${cellAddress(row, col)}: ${JSON.stringify(own)} instead of ${JSON.stringify(other)}`);
      }
    }
  }
  return found;
}

const parts = ["value", "formattedValue", "type", "format", "message"];

const place = fc.record({ sheet: fc.nat(2), col: fc.nat(8), row: fc.oneof({ weight: 4, arbitrary: fc.nat(11) }, { weight: 1, arbitrary: fc.nat(LONG + 5) }) });
const content = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom("", "7", "0", "text", "one\ntwo\nthree", "t3", "1/2", "TRUE") },
  fc.constantFrom("=TEST.ECHO(Long!A1:C120)", "=TEST.ECHO(Long!A2:C5)", "=Work!A1:C6", "=TRANSPOSE(Long!A1:B4)", "=1/0", "=A1", "=SUM(Work!A1:I120)", "=SEQUENCE(3,2)", "=SEQUENCE(Long!A3,2)", "=TEST.ODD()", "=IF(Long!A4>2,SEQUENCE(4),5)", "=A1:B3"),
);
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 8, arbitrary: fc.record({ do: fc.constant("enter" as const), place, content }) },
  { weight: 4, arbitrary: fc.record({ do: fc.constant("enter" as const), place: fc.record({ sheet: fc.constant(0), col: fc.nat(2), row: fc.nat(LONG) }), content }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constantFrom("undo" as const, "redo" as const) }) },
  fc.record({ do: fc.constantFrom<Look>("format", "large", "wrap", "filters", "merge", "unmerge", "clear", "hide", "insert", "remove", "filter", "locale", "recalculate"), place }),
);
type Place = { readonly sheet: number; readonly col: number; readonly row: number };
type Step =
  | { readonly do: "enter"; readonly place: Place; readonly content: string }
  | { readonly do: "undo" | "redo" }
  | { readonly do: Look; readonly place: Place };
type Look = "format" | "large" | "wrap" | "filters" | "merge" | "unmerge" | "clear" | "hide" | "insert" | "remove" | "filter" | "locale" | "recalculate";

function take(model: GridModel, given: Step): void {
  if (!("place" in given)) return void model.dispatch(given.do === "undo" ? "REQUEST_UNDO" : "REQUEST_REDO");
  const sheetId = model.getters.getSheetIds()[given.place.sheet] ?? "";
  const { col, row } = given.place;
  const target = [{ left: col, right: col + 1, top: row, bottom: row + 1 }];
  switch (given.do) {
    case "enter": return void model.dispatch("UPDATE_CELL", { sheetId, col, row, content: given.content });
    case "format": return void model.dispatch("SET_FORMATTING", { sheetId, target, format: "0.00" });
    case "large": return void model.dispatch("SET_FORMATTING", { sheetId, target, style: { fontSize: 30 } });
    case "wrap": return void model.dispatch("SET_FORMATTING", { sheetId, target, style: { wrapping: "wrap" } });
    case "filters": return model.getters.getCoreTables(sheetId).forEach(({ range: { zone } }) => { model.dispatch("UPDATE_TABLE", { sheetId, zone, config: { hasFilters: true } }); });
    case "merge": return void model.dispatch("ADD_MERGE", { sheetId, target, force: true });
    case "unmerge": return void model.dispatch("REMOVE_MERGE", { sheetId, target });
    case "clear": return void model.dispatch("DELETE_CONTENT", { sheetId, target });
    case "hide": return void model.dispatch("HIDE_COLUMNS_ROWS", { sheetId, dimension: "ROW", elements: [row] });
    case "insert": return void model.dispatch("ADD_COLUMNS_ROWS", { sheetId, sheetName: model.getters.getSheetName(sheetId), dimension: "ROW", base: row, quantity: 1, position: "before" });
    case "remove": return void model.dispatch("REMOVE_COLUMNS_ROWS", { sheetId, sheetName: model.getters.getSheetName(sheetId), dimension: "ROW", elements: [row] });
    case "filter": return void model.dispatch("UPDATE_FILTER", { sheetId, col, row: 0, value: { filterType: "values", hiddenValues: [String(row)] } });
    case "locale": return void model.dispatch("UPDATE_LOCALE", { locale: { ...model.getters.getLocale(), decimalSeparator: row % 2 ? "," : ".", thousandsSeparator: " ", formulaArgSeparator: ";" } });
    case "recalculate": return void model.dispatch("EVALUATE_CELLS", {});
  }
}

/** Node has no canvas, and in the library's stand-in every letter is without height. */
class MeasuringCanvas {
  getContext(): unknown {
    return {
      font: "" as string, save: () => undefined, restore: () => undefined,
      measureText(this: { font: string }, text: string) { return { width: 7 * text.length, fontBoundingBoxAscent: parseFloat(/[\d.]+px/.exec(this.font)?.[0] ?? "13"), fontBoundingBoxDescent: 3 }; },
    };
  }
}
beforeAll(() => { Object.assign(globalThis, { OffscreenCanvas: MeasuringCanvas }); });

/** The library warns of cells that read each other; some steps make such on purpose. */
beforeAll(() => { jest.spyOn(console, "warn").mockImplementation(() => undefined); });
afterAll(() => { jest.restoreAllMocks(); });

function compare(steps: readonly Step[]): void {
  const [keeping, plain] = pair();
  steps.forEach((each, index) => {
    for (const model of [keeping, plain]) take(model, each);
    const step = `after step ${index + 1}`;
    expect([step, ...differences(keeping, plain).slice(0, 5)]).toEqual([step]);
  });
}

function placeAt(sheet: number, address: string): Place {
  const { row, column } = parseCellAddress(address) ?? { row: NaN, column: NaN };
  return { sheet, col: column, row };
}
const enter = (sheet: number, address: string, text: string): Step => ({ do: "enter", place: placeAt(sheet, address), content: text });
const at = (look: Look, sheet: number, address: string): Step => ({ do: look, place: placeAt(sheet, address) });

/** Each ends in something that keeping would get wrong without a guard of its own. */
const known: readonly (readonly [string, readonly Step[]])[] = [
  ["a spill that becomes smaller, and a cell that read what it left", [enter(1, "E60", "=SEQUENCE(Long!A3,2)"), enter(2, "D1", "=Work!F62"), enter(0, "A3", "4"), enter(0, "A3", "2")]],
  ["a spill that gives way to one it was in the way of", [enter(0, "A3", "4"), enter(1, "E28", "=SEQUENCE(Long!A3)"), enter(1, "D30", "=SEQUENCE(1,2)"), enter(0, "A3", "1"), enter(0, "A3", "3")]],
  ["two spills that want one place after an edit of both", [enter(1, "E20", "=SEQUENCE(Long!A3)"), enter(1, "D22", "=SEQUENCE(1,Long!A3)"), enter(0, "A3", "3"), enter(0, "A3", "2"), enter(0, "A3", "3")]],
  ["a spill whose formula gives way to a value", [enter(1, "A1", "7"), enter(0, "A3", "9")]],
  ["a spill whose formula fails, and is there again", [enter(0, "B4", "=1/0"), enter(1, "A1", "=SUM(Long!B4)"), enter(0, "B4", "8")]],
  ["a formula that reads the cells it fills", [enter(1, "E30", "=SEQUENCE(3,1,COUNTA(E31:E32))"), enter(1, "E30", "=SEQUENCE(3,1,COUNTA(E31:E32)+Long!A3)"), enter(0, "A3", "5")]],
  ["two formulas that read each other's cells", [enter(1, "E40", "=SEQUENCE(3,1,SUM(G41:G42))"), enter(1, "G40", "=SEQUENCE(3,1,SUM(E41:E42)+Long!A3)"), enter(0, "A3", "5"), enter(0, "A3", "6")]],
  ["a number in another locale", [enter(0, "A3", "1.5"), at("locale", 0, "A2"), enter(0, "A4", "2")]],
  ["a reference to a sheet that is not there", [enter(1, "E1", "=COUNTA(Nowhere!A1:I120)"), enter(1, "E2", "=COUNTA(Elsewhere!A1:I120)"), enter(0, "A3", "9")]],
  ["a row that becomes higher and low again", [enter(0, "A5", "one\ntwo\nthree"), enter(0, "A5", "one")]],
  ["a row made high by its look alone, and an entry elsewhere", [enter(0, "A5", "high"), at("large", 0, "A5"), enter(0, "A9", "")]],
  ["a filter that hides a row after an entry", [enter(0, "A7", "=D3*1"), at("filters", 0, "A1"), at("filter", 0, "A5"), enter(0, "D3", "4"), enter(0, "D3", "9")]],
  ["a cell typed among those that a formula fills, and taken away", [enter(1, "B3", "mine"), enter(0, "A5", "9"), enter(1, "B3", ""), enter(0, "A5", "8")]],
  ["cells merged among those that a formula fills", [at("merge", 1, "B3"), enter(0, "A5", "9")]],
];

test.each(known)("%s is as in a grid that calculates all anew", (_, steps) => {
  compare(steps);
});

hardUse("after any steps every cell and every row is as in a grid that calculates all anew", 0.05, fc.array(step, { minLength: 1, maxLength: 14 }), (steps, counter) => {
  compare(steps);
  counter.rows += LONG;
});
