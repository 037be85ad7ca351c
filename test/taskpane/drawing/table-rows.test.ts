/** The way from the drawing to the rows of the tables and back; what a row must say is read from the demo's own tables. */
import { demoTables } from "../../../src/catalogue/demo";
import { onLine, onPart, onPort, onWheel } from "../../../src/taskpane/drawing/faults";
import { tableRows, type TableRow } from "../../../src/taskpane/drawing/table-rows";
import { demoDrawing } from "./demo-sketches";

/** The first cells of a row. */
const cellsOf = (place: TableRow | undefined, count: number): readonly unknown[] | undefined => place && demoTables.find(({ name }) => name === place.table)?.rows[place.row]?.slice(0, count);

function drawnRows(name: string) {
  const { sketch, car } = demoDrawing(name);
  const run = (number: number): string => onLine(sketch.lines.find((line) => line.run?.number === number)?.index ?? NaN);
  const port = (part: string, name_: string): string => onPort(sketch.parts.find(({ label }) => label === part)?.ports.find((one) => one.port.name === name_)?.key ?? "");
  return { rows: tableRows(sketch, car, demoTables.filter(({ name: table }) => table !== "Cars")), run, port };
}

test("a part leads to its row in Components and a port to its row in Ports", () => {
  const { rows, port } = drawnRows("Car 12");
  expect(cellsOf(rows.rowOf(onPart("PV-F")), 1)).toEqual(["PV-F"]);
  expect(rows.rowOf(onPart("PV-F"))?.table).toBe("Components");
  expect(cellsOf(rows.rowOf(port("CV-L", "Rear out")), 2)).toEqual(["CV-L", "Rear out"]);
  expect(rows.rowOf(port("CV-L", "Rear out"))?.table).toBe("Ports");
});

test("a measured run leads to its pair in Lengths; a bridged one has no row", () => {
  // Runs of Car 12, a Harrow 4 Saloon: 8 is from the tee at axle-tee to LR; 6, valve to frame-mid, is not measured on this platform.
  const { rows, run } = drawnRows("Car 12");
  expect(cellsOf(rows.rowOf(run(8)), 3)).toEqual(["Harrow 4 Saloon", "axle-tee", "LR"]);
  expect(rows.rowOf(run(6))).toBeUndefined();
});

test("a run that was found so on the car leads to its row in Joins", () => {
  // Car 14 has the two outlets of its master crossed, and Joins says so.
  const { rows, run } = drawnRows("Car 14");
  const found = [run(6), run(7)].map((key) => rows.rowOf(key)).find((row) => row?.table === "Joins");
  expect(cellsOf(found, 1)).toEqual(["Car 14"]);
});

test("a row speaks of everything on the drawing that stands in it, and of nothing on the drawing of another car", () => {
  const { rows } = drawnRows("Car 12");
  const row = rows.rowOf(onWheel("LF"));
  expect(cellsOf(row, 1)).toEqual(["DC-1"]);
  expect(rows.keysAt(row ?? { table: "", row: 0 })).toEqual([onWheel("LF"), onWheel("RF")]);
  expect(drawnRows("Car 9").rows.keysAt(row ?? { table: "", row: 0 })).toEqual([]);
  expect(rows.keysAt({ table: "Cars", row: 11 })).toEqual([]);
});
