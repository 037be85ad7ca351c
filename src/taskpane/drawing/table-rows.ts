/** In which row of the workbook's tables each thing on the drawing stands, and what on the drawing stands in a row. */
import { recogniseAll, rowsOf } from "../../catalogue/given-tables";
import type { ReadRow } from "../../catalogue/read-table";
import type { RawTable } from "../../catalogue/table-spec";
import { componentsTable } from "../../catalogue/tables/components";
import { joinsTable } from "../../catalogue/tables/joins";
import { lengthsTable } from "../../catalogue/tables/lengths";
import { portsTable } from "../../catalogue/tables/ports";
import { placeKey, type Instance } from "../../core/assembly";
import type { Car, FoundJoin, MeasuredLength } from "../../core/car";
import { nameKey } from "../../core/catalogue";
import { onLine, onPart, onPort, onWheel } from "./faults";
import type { Sketch, SketchLine } from "./sketch";

export interface TableRow {
  readonly table: string;
  /** 0 is the first row under the headings. */
  readonly row: number;
}

export interface TableRows {
  /** Undefined for what has no row of its own, such as a run whose length is bridged over other pairs. */
  readonly rowOf: (key: string) => TableRow | undefined;
  /** Several where one row speaks of several things, as a component that is on both sides. */
  readonly keysAt: (place: TableRow) => readonly string[];
}

/**
 * A part stands in Components, a port in Ports, a run in Joins where it was found so on the car, else in Lengths where its length was measured.
 * Tables are read when a row is first asked for: most drawings are only looked at.
 */
export function tableRows(sketch: Sketch, car: Car, tables: readonly RawTable[]): TableRows {
  let known: readonly Standing[] | undefined;
  const all = (): readonly Standing[] => (known ??= standingsOf(sketch, car, tables));
  return {
    rowOf: (key) => all().find((one) => one.key === key),
    keysAt: ({ table, row }) => all().filter((one) => one.table === table && one.row === row).map(({ key }) => key),
  };
}

interface Standing extends TableRow {
  readonly key: string;
}

function standingsOf(sketch: Sketch, car: Car, tables: readonly RawTable[]): readonly Standing[] {
  const { given } = recogniseAll(tables);
  const components = rowsBy(rowsOf(componentsTable, given).rows, ({ name }) => nameKey(name));
  const ports = rowsBy(rowsOf(portsTable, given).rows, ({ component, port }) => portName(component, port.name));
  const standing = (key: string, row: TableRow | undefined): Standing[] => (row ? [{ key, ...row }] : []);
  const part = (key: string, { component: { name } }: Instance): Standing[] => standing(key, components.get(nameKey(name)));
  return [
    ...sketch.parts.flatMap(({ label, instance, ports: own }) => [
      ...part(onPart(label), instance),
      ...own.flatMap(({ key, port }) => standing(onPort(key), ports.get(portName(instance.component.name, port.name))))]),
    ...sketch.wheels.flatMap(({ wheel, brake, hose }) => [brake, hose].flatMap((one) => (one ? part(onWheel(wheel), one) : []))),
    ...runStandings(sketch.lines, car, { joins: rowsOf(joinsTable, given).rows, lengths: rowsOf(lengthsTable, given).rows }),
  ];
}

function rowsBy<R>(rows: readonly ReadRow<R>[], keyOf: (value: R) => string): ReadonlyMap<string, TableRow> {
  return new Map(rows.flatMap((one) => (one.value === undefined ? [] : [[keyOf(one.value), placeOf(one)] as const])));
}

const placeOf = ({ table, row }: Pick<ReadRow<unknown>, "table" | "row">): TableRow => ({ table, row: row - 1 });
const portName = (component: string, port: string): string => `${nameKey(component)}|${nameKey(port)}`;

interface RunRows {
  readonly joins: readonly ReadRow<FoundJoin>[];
  readonly lengths: readonly ReadRow<MeasuredLength>[];
}

function runStandings(lines: readonly SketchLine[], { name, platform }: Car, { joins, lengths }: RunRows): Standing[] {
  const found = joins.filter(({ value }) => value && nameKey(value.car) === nameKey(name));
  const measured = lengths.filter(({ value }) => value && platform !== undefined && nameKey(value.platform) === nameKey(platform));
  return lines.flatMap((line) => {
    const rows = [found.find(({ value }) => value && joinsThese(value, line)), line.run?.basis === "estimated" ? undefined : lengthRow(measured, line)];
    return rows.flatMap((row) => (row ? [{ key: onLine(line.index), ...placeOf(row) }] : []));
  });
}

/** The names are as the row has them, be they labels or components. */
function joinsThese({ from, to }: FoundJoin, { joint: { found } }: SketchLine): boolean {
  const same = (a: FoundJoin["from"] | undefined, b: FoundJoin["from"] | undefined): boolean => a !== undefined && b !== undefined && portName(a.component, a.port) === portName(b.component, b.port);
  return same(from, found?.from) && same(to, found?.to);
}

/** A pair may be measured once for each tube: the row of the run's own tube is it, else the first. */
function lengthRow(rows: RunRows["lengths"], { joint: { from, to }, run }: SketchLine): ReadRow<MeasuredLength> | undefined {
  const places = [from.instance.outletPlace ?? from.instance.place, to.instance.place].map((place) => placeKey(place ?? "")).sort();
  const pairs = rows.filter(({ value }) => value && [value.from, value.to].map(placeKey).sort().every((place, index) => place === places[index]));
  return run && (pairs.find(({ value }) => value?.tube === run.tube) ?? pairs[0]);
}
