/** Whatever is written into Excel breaks off at each piece of its work and at each answer: nothing is half done unless it is said exactly. */
import { excelPort } from "../../src/workbook/excel";
import type { WorkbookPort } from "../../src/workbook/port";
import { FakeExcel } from "../workbook/fake-excel";

const cars = { name: "Cars", sheet: "Cars", headings: ["Car", "Valves"], rows: [["A", "?"], ["B", 1]] };
const picture = { png: "iVBORw0KGgo=", alt: "a dot", row: 0, column: 0, width: 1, height: 1 };
/** Three requests of 1.2 million characters at most, and one for the pictures. */
const long = Array.from({ length: 30 }, (_, row) => [row, "y".repeat(100_000)]);

/** Every method of the port that writes: a new one does not compile without its line here. */
type Writing = "writeTableCell" | "appendTableRow" | "writeSheet" | "writeTables" | "insertFormula";
type Reading = "sheetNames" | "tableNames" | "readTable" | "selectTableRow" | "selection" | "workbookName" | "onSelect" | "onChange";
type Unlisted = Exclude<keyof WorkbookPort, Writing | Reading>;
const unlisted: readonly Unlisted[] = [];

interface Case {
  readonly write: (port: WorkbookPort) => Promise<unknown>;
  /** What must be named when it is not whole. */
  readonly names: RegExp;
}

const cases: Readonly<Record<Writing | "writeSheet that is long", Case>> = {
  writeTableCell: { write: (port) => port.writeTableCell({ table: "Cars", row: 1, column: "Valves" }, "none"), names: /never/ },
  appendTableRow: { write: (port) => port.appendTableRow("Cars", { Car: "C", Valves: "none" }), names: /The last row of the table Cars is new and may not be whole/ },
  writeSheet: { write: (port) => port.writeSheet("Quote", { rows: [["Total", 12]], styles: [{ row: 0, column: 0, rows: 1, columns: 2, style: { bold: true, fill: "#eeeeee" } }], columnWidths: [20], merges: [{ row: 1, column: 0, rows: 1, columns: 2 }], page: { landscape: true, footer: "x" } }), names: /The sheet Quote is there but may not be whole/ },
  "writeSheet that is long": { write: (port) => port.writeSheet("Quote", { rows: long, pictures: [picture, picture] }), names: /The sheet Quote is there but may not be whole/ },
  writeTables: { write: (port) => port.writeTables([{ name: "Nuts", headings: ["Nut"], rows: [["N-1"]] }, { name: "Hoses", headings: ["Hose"], rows: [] }]), names: /(The sheet Nuts is|The sheets Nuts, Hoses are) there but may not be whole/ },
  insertFormula: { write: (port) => port.insertFormula("=1+1"), names: /never/ },
};

/** A workbook whose user stands on a blank cell. */
function opened(): FakeExcel {
  const excel = new FakeExcel([cars]);
  excel.select({ sheet: excel.sheetNamed("Cars").id, row: 20, column: 5, rows: 1, columns: 1 });
  return excel;
}

/** Sheets, tables and what the cells hold; of a cell that keeps its value the format may have changed. */
const contentOf = ({ sheets, tables }: FakeExcel): string =>
  JSON.stringify([tables, sheets.map(({ name, cells, looks, widths, merges, pictures, page }) => [name, [...cells].filter(([, { value }]) => value !== "").map(([at, { value, formula }]) => [at, value, formula]), [...looks], [...widths], merges, pictures, page])]);

async function attempt(excel: FakeExcel, { write }: Case): Promise<string> {
  return write(excelPort(excel.run)).then(() => "", (error: unknown) => (error as Error).message);
}

test("every method that writes is tried", () => {
  expect(unlisted).toEqual([]);
});

test.each(Object.entries(cases))("%s", async (_, one) => {
  const sound = opened();
  const before = contentOf(sound);
  expect(await attempt(sound, one)).toBe("");
  const after = contentOf(sound);
  expect(after).not.toBe(before);
  const faults = [
    ...Array.from({ length: sound.host.works }, (__, index) => ({ breaksAt: index + 1 })),
    ...Array.from({ length: sound.host.syncs }, (__, index) => ({ losesAnswerOf: index + 1 })),
  ];
  expect(faults.length).toBeGreaterThan(3);
  for (const fault of faults) {
    const excel = opened();
    Object.assign(excel.host, fault);
    const said = await attempt(excel, one);
    const now = contentOf(excel);
    expect({ fault, said }).toEqual({ fault, said: expect.stringMatching(/^[A-Z].* .*\.$/) as string });
    // A single cell is written or not, and seen.
    if (now !== before && !(now === after && one.names.source === "never")) expect({ fault, said }).toEqual({ fault, said: expect.stringMatching(one.names) as string });
    else expect({ fault, said }).toEqual({ fault, said: expect.not.stringMatching(/may not be whole/) as string });
    if (now !== before) continue;
    expect({ fault, again: await attempt(excel, one), isDone: contentOf(excel) === after }).toEqual({ fault, again: "", isDone: true });
  }
});

test("where Excel cannot even be asked what is left, it is said what may be", async () => {
  for (const [one, sentence] of [[cases.writeSheet, /See whether there is a sheet Quote/], [cases.appendTableRow, /The table Cars may have a new last row/], [cases.writeTables, /See whether there is any of the sheets Nuts, Hoses/]] as const) {
    const sound = opened();
    await attempt(sound, one);
    const excel = opened();
    let left = sound.host.syncs;
    const gone = excelPort((batch, choices) => excel.run((context) => batch(new Proxy(context, { get: (of, name) => (name === "sync" ? () => (--left <= 0 ? Promise.reject(Object.assign(new Error("gone"), { code: "GeneralException" })) : of.sync()) : Reflect.get(of, name) as unknown) })), choices));
    await expect(one.write(gone)).rejects.toThrow(sentence);
  }
});
