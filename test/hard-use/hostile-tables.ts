/** Tables of the demo with cells spoiled, rows repeated, left out, led in circles, and headings moved. */
import fc from "fast-check";
import { demoTables, type DemoTable } from "../../src/catalogue/demo";
import { hostileOrLongCell, type HostileCell } from "./hostile-cells";

export interface HostileTable {
  readonly name: string;
  readonly headings: readonly HostileCell[];
  readonly rows: readonly (readonly HostileCell[])[];
}

export const demoTable = (name: string): DemoTable => {
  const table = demoTables.find((one) => one.name === name);
  if (!table) throw new Error(`The demo has no ${name}.`);
  return table;
};

export const CAR_HEADINGS: readonly string[] = demoTable("Cars").headings;
const NOT_CATALOGUE = ["Cars", "Seen"];
export const catalogueTablesOfDemo: readonly HostileTable[] = demoTables.filter(({ name }) => !NOT_CATALOGUE.includes(name));

/** A row of the table with some cells replaced: a few as a tired hand would, or nearly all. */
const spoiledRow = ({ headings, rows }: HostileTable): fc.Arbitrary<HostileCell[]> =>
  fc.tuple(fc.nat(rows.length - 1), fc.oneof({ weight: 5, arbitrary: spoilings(headings.length, 4) }, { weight: 1, arbitrary: spoilings(headings.length, headings.length) }))
    .map(([from, changes]) => withCells(rows[from] ?? [], changes));

const spoilings = (width: number, most: number): fc.Arbitrary<(readonly [number, HostileCell])[]> => fc.array(fc.tuple(fc.nat(width - 1), hostileOrLongCell), { maxLength: most });

function withCells(row: readonly HostileCell[], changes: readonly (readonly [number, HostileCell])[]): HostileCell[] {
  const changed = [...row];
  for (const [index, cell] of changes) changed[index] = cell;
  return changed;
}

/** Rows of cars. Each has a name of its own, so that what is said of repeated names does not hang on the order. */
export const hostileCars = (least: number, most: number): fc.Arbitrary<HostileCell[][]> =>
  fc.array(spoiledRow(demoTable("Cars")), { minLength: least, maxLength: most, size: "max" }).map((rows) => rows.map((row, index) => withCells(row, [[CAR_HEADINGS.indexOf("Car"), `Fuzz ${String(index)}`]])));

/** Rows whose names are as hostile as the rest: blank, repeated, no text at all. */
export const namelessCars = (most: number): fc.Arbitrary<HostileCell[][]> => hostileRowsOf(demoTable("Cars"), most);

type Change =
  | { readonly kind: "spoil"; readonly row: number; readonly cells: readonly (readonly [number, HostileCell])[] }
  | { readonly kind: "repeat"; readonly row: number }
  | { readonly kind: "drop"; readonly row: number }
  | { readonly kind: "circle"; readonly row: number; readonly to: number; readonly column: number }
  | { readonly kind: "heading"; readonly column: number; readonly cell: HostileCell };

const changeOf = ({ headings, rows }: HostileTable): fc.Arbitrary<Change> => {
  const row = fc.nat(Math.max(0, rows.length - 1));
  const column = fc.nat(headings.length - 1);
  return fc.oneof(
    { weight: 8, arbitrary: fc.record({ kind: fc.constant("spoil" as const), row, cells: spoilings(headings.length, 4) }) },
    { weight: 2, arbitrary: fc.oneof(fc.record({ kind: fc.constant("repeat" as const), row }), fc.record({ kind: fc.constant("drop" as const), row })) },
    // A cell of another row in the same column: passages, joins and sets then lead to one another in circles.
    { weight: 4, arbitrary: fc.record({ kind: fc.constant("circle" as const), row, to: row, column }) },
    { weight: 1, arbitrary: fc.record({ kind: fc.constant("heading" as const), column, cell: hostileOrLongCell }) },
  );
};

function changed(table: HostileTable, changes: readonly Change[]): HostileTable {
  const headings = [...table.headings];
  let rows = table.rows.map((row) => [...row]);
  for (const change of changes) {
    const at = "row" in change ? change.row % Math.max(1, rows.length) : 0;
    const row = rows[at] ?? [];
    switch (change.kind) {
      case "spoil": rows[at] = withCells(row, change.cells); break;
      case "repeat": rows.push([...row]); break;
      case "drop": rows = rows.filter((_, index) => index !== at); break;
      case "circle": row[change.column] = rows[change.to % Math.max(1, rows.length)]?.[change.column] ?? 0; break;
      case "heading": headings[change.column] = change.cell; break;
    }
  }
  return Object.assign({ ...table, headings, rows }, { [fc.toStringMethod]: () => sayChanges(table, headings, rows) });
}

/** A failure prints what is not as in the demo, and not five hundred rows. */
function sayChanges(table: HostileTable, headings: readonly HostileCell[], rows: HostileTable["rows"]): string {
  const known = new Set(table.rows.map((row) => JSON.stringify(row)));
  const differs = rows.map((row) => JSON.stringify(row)).filter((row) => !known.has(row));
  const heads = headings.filter((heading, index) => heading !== table.headings[index]);
  return heads.length + differs.length === 0 && rows.length === table.rows.length ? table.name : `${table.name} (${String(rows.length)} rows, headings ${JSON.stringify(heads)}, rows ${differs.join(" ")})`;
}

/** The demo's catalogue tables with some changed, one missing, one given twice. */
export const hostileCatalogue: fc.Arbitrary<HostileTable[]> = fc
  .tuple(
    fc.tuple(...catalogueTablesOfDemo.map((table) => fc.array(changeOf(table), { maxLength: 5 }))),
    fc.option(fc.nat(catalogueTablesOfDemo.length - 1), { freq: 4, nil: -1 }),
    fc.option(fc.nat(catalogueTablesOfDemo.length - 1), { freq: 4, nil: -1 }),
  )
  .map(([changes, missing, twice]) => {
    const tables = catalogueTablesOfDemo.map((table, index) => changed(table, changes[index] ?? []));
    return [...tables.filter((_, index) => index !== missing), ...tables.filter((_, index) => index === twice)];
  });

/** The table's own headings, as they should be most of the time. */
export const hostileHeadings = ({ headings }: HostileTable): fc.Arbitrary<readonly HostileCell[]> =>
  fc.oneof({ weight: 3, arbitrary: fc.constant(headings) }, { weight: 2, arbitrary: spoilings(headings.length, 3).map((changes) => withCells(headings, changes)) });

export const hostileRowsOf = (table: HostileTable, most: number): fc.Arbitrary<HostileCell[][]> => fc.array(spoiledRow(table), { minLength: 1, maxLength: most, size: "max" });
