import { demoTables } from "../../src/catalogue/demo";
import { reportOn } from "../../src/core/report";
import { memoryWorkbook, type MemoryWorkbook } from "../../src/workbook/memory";
import type { TableContent } from "../../src/workbook/port";
import { followWorkbook, type FollowOptions, type Following, type WorkbookReading } from "../../src/workbook/workbook-reports";

const demo: readonly TableContent[] = demoTables.map((table) => ({ ...table, sheet: table.name }));
const carCount = demo.find(({ name }) => name === "Cars")?.rows.length ?? 0;

test("every car of the workbook has its line, in the order of rows, and the catalogue is in order", async () => {
  const { next, stop } = follow(memoryWorkbook(demo));
  const { cars, carTables, tableErrors } = await next();
  stop();
  expect(cars.map(({ row }) => row)).toEqual([...Array(carCount).keys()]);
  expect(cars.every(({ verdict, report }) => verdict !== undefined && report?.verdict === verdict)).toBe(true);
  expect([carTables, tableErrors]).toEqual([["Cars"], []]);
});

test("a column of cars whose heading is mistyped is told of, and every car has its line", async () => {
  const mistyped = demo.map((table) => (table.name === "Cars" ? { ...table, headings: table.headings.map((heading) => (heading === "Master" ? "Mster" : heading)) } : table));
  const { next, stop } = follow(memoryWorkbook(mistyped));
  const { cars, tableErrors } = await next();
  stop();
  expect(cars).toHaveLength(carCount);
  expect(tableErrors).toEqual([{ table: "Cars", column: "Master", read: "Mster", accepted: "Master" }]);
});

test("an edit of one car costs one report and one reading of its table", async () => {
  const book = memoryWorkbook(demo);
  const { next, stop, reported } = follow(book);
  await next();
  expect(reported).toHaveLength(carCount);
  const read = countReadings(book);
  book.edit("Cars", 0, "Material", "stainless");
  const { cars } = await next();
  stop();
  expect(reported.slice(carCount)).toEqual(["Car 1"]);
  expect(cars[0]?.report?.car.material).toBe("stainless");
  expect(read).toEqual(["Cars"]);
});

test("an edit that changes nothing that is read costs no report", async () => {
  const book = memoryWorkbook([...demo, { name: "Diary", sheet: "Diary", headings: ["Day"], rows: [["Monday"]] }]);
  const { next, stop, reported } = follow(book);
  await next();
  book.edit("Diary", 0, "Day", "Tuesday");
  const { tableErrors } = await next();
  stop();
  expect([reported.length, tableErrors]).toEqual([carCount, []]);
});

test("an edit of the catalogue makes every report again", async () => {
  const book = memoryWorkbook(demo);
  const { next, stop, reported } = follow(book);
  const before = (await next()).catalogue.key;
  book.edit("Components", 0, "Price", 999);
  const { catalogue } = await next();
  stop();
  expect(catalogue.key).not.toBe(before);
  expect(reported).toHaveLength(2 * carCount);
});

test("a car whose report fails is told as such, and the others stand", async () => {
  const fault = new Error("a fault of ours");
  const { next, stop } = follow(memoryWorkbook(demo), { breakOn: "Car 2", fault });
  const { cars } = await next();
  stop();
  expect(cars.filter(({ failure }) => failure !== undefined)).toEqual([expect.objectContaining({ name: "Car 2", failure: fault, verdict: undefined, findings: [] })]);
  expect(cars.filter(({ verdict }) => verdict !== undefined)).toHaveLength(carCount - 1);
});

test("a row that names no car says so, and the others stand", async () => {
  const book = memoryWorkbook(demo);
  const { next, stop } = follow(book);
  await next();
  book.edit("Cars", 4, "Car", "");
  const { cars } = await next();
  stop();
  expect(cars[4]).toMatchObject({ name: "row 6", sheetRow: 6, report: undefined, verdict: "decide", findings: [{ code: "data-missing", severity: "decide" }] });
  expect(cars).toHaveLength(carCount);
});

test("a table of ours that cannot be recognised is an error, a table of the user's own is not", async () => {
  const strange = { headings: ["Day"], rows: [["Monday"]] };
  const { next, stop } = follow(memoryWorkbook([{ ...strange, name: "Ports", sheet: "Ports" }, { ...strange, name: "Diary", sheet: "Diary" }]));
  const { tableErrors, carTables, cars } = await next();
  stop();
  expect(tableErrors.map(({ table }) => table)).toEqual(["Ports"]);
  expect([carTables, cars]).toEqual([[], []]);
});

test("a table of cars may have any name, and its rows keep it", async () => {
  const renamed = demo.map((table) => (table.name === "Cars" ? { ...table, name: "This_week" } : table));
  const { next, stop } = follow(memoryWorkbook(renamed));
  const { carTables, cars } = await next();
  stop();
  expect([carTables, cars[0]?.table]).toEqual([["This_week"], "This_week"]);
});

test("an edit that comes while reports are made is in the reading that follows, and no stale reading is told", async () => {
  const book = memoryWorkbook(demo);
  const { next, stop, readings } = follow(book, { slow: () => { book.edit("Cars", 0, "Customer", "Newcomer"); } });
  const { cars } = await next();
  stop();
  expect(cars[0]?.customer).toBe("Newcomer");
  expect(readings).toHaveLength(1);
});

test("a workbook that cannot be read is told, and reading again goes on", async () => {
  const book = memoryWorkbook(demo);
  const names = book.tableNames.bind(book);
  book.tableNames = () => Promise.reject(new Error("busy"));
  const { following, failures, next, stop } = follow(book);
  await expect(next()).rejects.toThrow("busy");
  book.tableNames = names;
  following.again();
  expect((await next()).cars).toHaveLength(carCount);
  stop();
  expect(failures).toHaveLength(1);
});

test("after the stop nothing is told any more", async () => {
  const book = memoryWorkbook(demo);
  const { next, stop, readings } = follow(book);
  await next();
  stop();
  book.edit("Cars", 0, "Customer", "Newcomer");
  await new Promise((resolve) => { setTimeout(resolve, 120); });
  expect(readings).toHaveLength(1);
});

test("work that is held stands still, keeps what is done, and goes on when told", async () => {
  const told: number[][] = [];
  const { following, next, stop, reported, readings } = follow(memoryWorkbook(demo), {
    slow: () => undefined,
    onProgress: (work, done, total) => {
      told.push([done, total]);
      if (told.length === 1) work.hold();
    },
  });
  await expect(next()).rejects.toThrow("held");
  expect([told[0]?.[1], readings.length]).toEqual([carCount, 0]);
  const before = reported.length;
  expect(before).toBeLessThan(carCount);
  await new Promise((resolve) => { setTimeout(resolve, 50); });
  expect(reported.length).toBe(before);
  following.goOn();
  expect((await next()).cars).toHaveLength(carCount);
  stop();
  expect(reported).toHaveLength(carCount); // none was made twice
});

test("rows are named by the sheet's own numbers, which follow a table that moves down, and no report is made again for it", async () => {
  const book = memoryWorkbook(demo);
  const { next, stop, reported } = follow(book);
  const before = await next();
  expect([before.cars[16]?.sheetRow, before.sayRow("cars", 17)]).toEqual([18, "row 18"]); // headings in row 1, so the 17th car is in row 18
  const cars = await book.readTable("Cars");
  if (!cars) throw new Error("no cars");
  book.replaceTable({ ...cars, firstRow: 6 }); // headings in row 5
  const { cars: lines, sayRow } = await next();
  stop();
  expect([lines[0]?.sheetRow, lines[16]?.sheetRow, sayRow("Cars", 17)]).toEqual([6, 22, "row 22"]);
  expect(reported).toHaveLength(carCount);
});

test("rows that move keep their reports, and a name given twice costs one more", async () => {
  const book = memoryWorkbook(demo);
  const { next, stop, reported } = follow(book);
  await next();
  const cars = await book.readTable("Cars");
  if (!cars) throw new Error("no cars");
  const [first = [], ...rest] = cars.rows;
  book.replaceTable({ ...cars, rows: [["Newcomer", ...first.slice(1)], first, ...rest, first] });
  const { cars: lines } = await next();
  stop();
  expect(reported.slice(carCount)).toEqual(["Newcomer", "Car 1"]); // the second Car 1 has a fault that the first has not
  expect(lines.map(({ row }) => row)).toEqual([...Array(carCount + 2).keys()]);
});

interface Followed {
  readonly following: Following;
  /** The next reading; rejects when a reading fails. */
  next(): Promise<WorkbookReading>;
  stop(): void;
  readonly reported: readonly string[];
  readonly readings: readonly WorkbookReading[];
  readonly failures: readonly unknown[];
}

interface Disturbance {
  readonly breakOn?: string;
  readonly fault?: Error;
  /** Called during the first report, which then takes longer than a slice. */
  readonly slow?: () => void;
  readonly onProgress?: (following: Following, done: number, total: number) => void;
}

function follow(book: MemoryWorkbook, { breakOn, fault, slow, onProgress }: Disturbance = {}): Followed {
  const waiting: { readonly resolve: (reading: WorkbookReading) => void; readonly reject: (error: unknown) => void }[] = [];
  const [reported, readings, failures]: [string[], WorkbookReading[], unknown[]] = [[], [], []];
  const report: NonNullable<FollowOptions["report"]> = (catalogue, { car, name }) => {
    reported.push(name);
    if (reported.length === 1 && slow) {
      slow();
      const end = performance.now() + 60; // past the slice and past the gathering of changes
      while (performance.now() < end);
    }
    if (name === breakOn) throw fault ?? new Error();
    return car && reportOn(catalogue, car);
  };
  const listener = {
    reading: (reading: WorkbookReading) => {
      readings.push(reading);
      waiting.shift()?.resolve(reading);
    },
    progress: (done: number, total: number) => { onProgress?.(following, done, total); },
    held: () => { waiting.shift()?.reject(new Error("held")); },
    failed: (error: unknown) => {
      failures.push(error);
      waiting.shift()?.reject(error);
    },
  };
  const next = (): Promise<WorkbookReading> => new Promise((resolve, reject) => { waiting.push({ resolve, reject }); });
  const following = followWorkbook(book, listener, { report });
  return { following, next, stop: () => { following.stop(); }, reported, readings, failures };
}

function countReadings(book: MemoryWorkbook): string[] {
  const read: string[] = [];
  const readTable = book.readTable.bind(book);
  book.readTable = (name) => {
    read.push(name);
    return readTable(name);
  };
  return read;
}
