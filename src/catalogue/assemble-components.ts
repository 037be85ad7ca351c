/** Brings a component's rows of five tables together. */
import { nameKey } from "../core/catalogue";
import type { Booster, Component, ComponentKind, Passage, Port, WheelBrake } from "../core/component";
import { textOf } from "./cell";
import { errorAt, namesIn, partition, sayNames, soundRows, withKnown, withoutRepeats, type Checked, type Names, type Sound } from "./cross-checks";
import { rowsOf, type GivenTable, type Rows } from "./given-tables";
import { groupBy } from "../core/group-by";
import type { TableError } from "./table-error";
import { boostersTable } from "./tables/boosters";
import { componentsTable, type ComponentRow } from "./tables/components";
import { passagesTable, type PassageRow } from "./tables/passages";
import { portsTable, type PortRow } from "./tables/ports";
import { wheelBrakesTable } from "./tables/wheel-brakes";

export interface ComponentsRead {
  readonly value: ReadonlyMap<string, Component>;
  /** For other tables to refer to. */
  readonly names: Names;
  readonly errors: readonly TableError[];
}

export function readComponents(given: readonly GivenTable[]): ComponentsRead {
  const rows = rowsOf(componentsTable, given);
  const known = namesIn(rows, "name", "a component of the Components table");
  const components = withoutRepeats(soundRows(rows), (one) => nameKey(one.name), (one) => ({ column: "Component", read: one.name }));
  const kinds = new Map(components.sound.map(({ value }) => [nameKey(value.name), value.kind]));
  const ports = readPorts(rowsOf(portsTable, given), known);
  const passages = readPassages(rowsOf(passagesTable, given), known, ports.names);
  const boosters = readFigures(rowsOf(boostersTable, given), { known, kinds, allowed: ["booster"] });
  const brakes = readFigures(rowsOf(wheelBrakesTable, given), { known, kinds, allowed: ["disc", "drum"] });
  const parts: PartsByComponent = {
    ports: ports.byComponent, unread: ports.unread, passages: passages.byComponent,
    boosters: new Map(boosters.sound.map(({ value }) => [nameKey(value.component), value.booster])),
    wheelBrakes: new Map(brakes.sound.map(({ value }) => [nameKey(value.component), value.wheelBrake])),
  };
  return {
    value: new Map(components.sound.map(({ value }) => [nameKey(value.name), withParts(value, parts)])),
    names: known,
    errors: [...rows.errors, ...components.errors, ...ports.errors, ...passages.errors, ...boosters.errors, ...brakes.errors],
  };
}

interface PartsByComponent {
  readonly ports: ReadonlyMap<string, readonly Port[]>;
  /** Components with a row of ports that was left out. */
  readonly unread: ReadonlySet<string>;
  readonly passages: ReadonlyMap<string, readonly Passage[]>;
  readonly boosters: ReadonlyMap<string, Booster>;
  readonly wheelBrakes: ReadonlyMap<string, WheelBrake>;
}

function withParts(row: ComponentRow, parts: PartsByComponent): Component {
  const key = nameKey(row.name);
  return { ...row, ports: parts.ports.get(key) ?? [], ...(parts.unread.has(key) ? { portsUnread: true } : {}), passages: parts.passages.get(key) ?? [], wheelBrake: parts.wheelBrakes.get(key), booster: parts.boosters.get(key) };
}

/** Port names of each component as their rows write them, rows with errors included, by name key. */
type PortNames = ReadonlyMap<string, ReadonlyMap<string, string>>;

function readPorts(rows: Rows<PortRow>, known: Names) {
  const owned = withKnown(soundRows(rows), known, (one) => ({ column: "Component", read: one.component }));
  const once = withoutRepeats(owned.sound, (one) => pairKey(one.component, one.port.name), (one) => ({ column: "Port", read: one.port.name }));
  const byComponent = portsByComponent(once.sound);
  const unread = new Set(rows.rows.filter(({ value }) => value === undefined).flatMap(({ cells }) => textOf(cells["component"]) ?? []).map(nameKey));
  return { byComponent, unread, names: portNames(rows), errors: [...rows.errors, ...owned.errors, ...once.errors] };
}

function portsByComponent(sound: readonly Sound<PortRow>[]): ReadonlyMap<string, readonly Port[]> {
  const groups = groupBy(sound, ({ value }) => nameKey(value.component));
  return new Map([...groups].map(([component, group]) => [component, group.map(({ value }) => value.port)]));
}

function portNames(rows: Rows<PortRow>): PortNames {
  const names = new Map<string, Map<string, string>>();
  for (const { cells } of rows.rows) {
    const [component, port] = [textOf(cells["component"]), textOf(cells["name"])];
    if (component === undefined || port === undefined) continue;
    const ports = names.get(nameKey(component)) ?? new Map<string, string>();
    names.set(nameKey(component), ports);
    if (!ports.has(nameKey(port))) ports.set(nameKey(port), port);
  }
  return names;
}

function readPassages(rows: Rows<PassageRow>, known: Names, ports: PortNames) {
  const owned = withKnown(soundRows(rows), known, (one) => ({ column: "Component", read: one.component }));
  const from = withPort(owned.sound, ports, "From", (one) => one.from);
  const to = withPort(from.sound, ports, "To", (one) => one.to);
  const spelt = [...to.sound.map(({ value }) => value), ...unreadPassages(rows, ports)].map((value) => ({ ...value, from: spelling(ports, value.component, value.from), to: spelling(ports, value.component, value.to) }));
  const byPassage = groupBy(spelt, (one) => `${pairKey(one.component, one.from)}|${nameKey(one.to)}`);
  return { byComponent: passagesByComponent([...byPassage.values()]), errors: [...rows.errors, ...owned.errors, ...from.errors, ...to.errors] };
}

/** A row with an error still says that its passage does something: what, nobody knows. */
function unreadPassages(rows: Rows<PassageRow>, ports: PortNames): PassageRow[] {
  return rows.rows.filter(({ value }) => value === undefined).flatMap(({ cells }) => {
    const [component, from, to] = ["component", "from", "to"].map((field) => textOf(cells[field]) ?? "") as [string, string, string];
    const names = ports.get(nameKey(component));
    return names?.has(nameKey(from)) && names.has(nameKey(to)) ? [{ component, from, to, duty: undefined, bypassOnFailure: false }] : [];
  });
}

function passagesByComponent(passages: readonly (readonly PassageRow[])[]): ReadonlyMap<string, readonly Passage[]> {
  const groups = groupBy(passages, (rows) => nameKey(rows[0]?.component ?? ""));
  return new Map([...groups].map(([component, group]) => [component, group.map(passageOf)]));
}

/** Ports are looked up without regard to case; from here on they are spelt as in Ports. */
const spelling = (ports: PortNames, component: string, port: string): string => ports.get(nameKey(component))?.get(nameKey(port)) ?? port;

function withPort(sound: readonly Sound<PassageRow>[], ports: PortNames, column: string, portOf: (value: PassageRow) => string): Checked<PassageRow> {
  return partition(sound, ({ row, value }) => {
    const names = ports.get(nameKey(value.component));
    if (names?.has(nameKey(portOf(value)))) return undefined;
    const accepted = names ? `a port of ${value.component}: ${sayNames([...names.values()])}` : `a port of ${value.component}, which has none in the Ports table`;
    return errorAt(row, { column, read: portOf(value) }, accepted);
  });
}

/** One row that does not say what the passage does leaves the whole passage unknown. */
function passageOf(rows: readonly PassageRow[]): Passage {
  const duties = rows.map((one) => one.duty);
  return {
    from: rows[0]?.from ?? "",
    to: rows[0]?.to ?? "",
    duties: duties.every((duty) => duty !== undefined) ? duties : undefined,
    bypassOnFailure: rows.some((one) => one.bypassOnFailure),
  };
}

interface Owners {
  readonly known: Names;
  readonly kinds: ReadonlyMap<string, ComponentKind>;
  readonly allowed: readonly ComponentKind[];
}

/** Figures belong to a component of the right kind, once. */
function readFigures<R extends { readonly component: string }>(rows: Rows<R>, { known, kinds, allowed }: Owners): Checked<R> {
  const pointerOf = (one: R) => ({ column: "Component", read: one.component });
  const owned = withKnown(soundRows(rows), known, pointerOf);
  const right = partition(owned.sound, ({ row, value }) => {
    const kind = kinds.get(nameKey(value.component));
    return kind === undefined || allowed.includes(kind) ? undefined : errorAt(row, pointerOf(value), `a component of kind ${allowed.join(" or ")} (this one is a ${kind})`);
  });
  const once = withoutRepeats(right.sound, (one) => nameKey(one.component), pointerOf);
  return { sound: once.sound, errors: [...rows.errors, ...owned.errors, ...right.errors, ...once.errors] };
}

const pairKey = (a: string, b: string): string => `${nameKey(a)}|${nameKey(b)}`;
