/** The open findings of a car with a letter each, and where on the drawing each one is marked. */
import { portKey, sayCircuit, sayPort, type Assembly, type Instance } from "../../core/assembly";
import { WHEELS } from "../../core/component";
import type { Finding } from "../../core/finding";

export interface Fault {
  /** Ties the mark on the drawing to the sentence beside it. */
  readonly letter: string;
  readonly finding: Finding;
  /** Keys of what it is marked on; the car as a whole where it names nothing on the drawing. */
  readonly on: readonly string[];
}

export const onCar = "car";
export const onPart = (label: string): string => `part|${label}`;
export const onPort = (key: string): string => `port|${key}`;
export const onLine = (index: number): string => `line|${index}`;
export const onWheel = (wheel: string): string => `wheel|${wheel}`;
/** Of the fault itself, not of what it is marked on. */
export const onFault = (letter: string | undefined): string => `fault|${letter ?? ""}`;
export const onCircuit = (name: string): string => `circuit|${name}`;

/** Accepted and switched-off findings are not marked: the Flags view lists them. */
export function faultsOf(assembly: Assembly, findings: readonly Finding[]): readonly Fault[] {
  const names = namesOn(assembly);
  return findings.filter(({ standing }) => standing === "open").map((finding, index) => ({ letter: letterOf(index), finding, on: placesOf(assembly, names, finding.place) }));
}

/** a … z, then aa, ab, … */
function letterOf(index: number): string {
  const last = String.fromCharCode(97 + (index % 26));
  return index < 26 ? last : `${letterOf(Math.floor(index / 26) - 1)}${last}`;
}

interface Name {
  readonly text: string;
  readonly on: readonly string[];
}

/** Everything a place may name, longest first, so that a port is found before its part. */
function namesOn({ instances }: Assembly): readonly Name[] {
  const ports = instances.flatMap((instance) => instance.component.ports.map((port) => ({ text: sayPort({ instance, port }), on: [instance.wheel ? onWheel(instance.wheel) : onPort(portKey({ instance, port }))] })));
  const labels = instances.map((instance) => ({ text: instance.label, on: [keyOf(instance)] }));
  const kinds = instances.map(({ component }) => ({ text: component.name, on: instances.filter((one) => one.component === component).map(keyOf) }));
  const wheels = WHEELS.map((wheel) => ({ text: wheel, on: [onWheel(wheel)] }));
  return [...ports, ...labels, ...kinds, ...wheels].sort((a, b) => b.text.length - a.text.length);
}

/** A switch hangs on no line, so it is not on the drawing. */
const keyOf = (instance: Instance): string => (instance.wheel ? onWheel(instance.wheel) : instance.component.kind === "switch" ? onCar : onPart(instance.label));

/** A cause at a part outweighs the wheels it tells on; a circuit or the car is marked only where nothing nearer is named. */
function placesOf(assembly: Assembly, names: readonly Name[], place: string): readonly string[] {
  const open = portsListed(assembly, place);
  if (open.length > 0) return open;
  const found = [...new Set(namedIn(names, place))];
  const lines = place.includes("→") ? linesBetween(assembly, found) : [];
  if (lines.length > 0) return lines;
  const parts = found.filter((key) => key.startsWith("part|") || key.startsWith("port|"));
  if (parts.length > 0) return parts;
  const wheels = found.filter((key) => key.startsWith("wheel|"));
  return wheels.length > 0 ? wheels : circuitIn(assembly, place);
}

/** `BLK-5W: Out 3, Out 4` names the ports after the part. */
function portsListed({ instances }: Assembly, place: string): string[] {
  const instance = instances.find(({ label }) => place.startsWith(`${label}: `));
  if (!instance || instance.wheel) return [];
  const named = new Set(place.slice(instance.label.length + 2).split(", "));
  return instance.component.ports.filter(({ name }) => named.has(name)).map((port) => onPort(portKey({ instance, port })));
}

function namedIn(names: readonly Name[], place: string): string[] {
  const found: string[] = [];
  for (let at = 0; at < place.length;) {
    const name = isEdge(place[at - 1]) ? names.find(({ text }) => text !== "" && place.startsWith(text, at) && isEdge(place[at + text.length])) : undefined;
    if (name) found.push(...name.on);
    at += name?.text.length ?? 1;
  }
  return found;
}

const isEdge = (letter: string | undefined): boolean => letter === undefined || !/[\w@-]/.test(letter);

function linesBetween({ joints }: Assembly, found: readonly string[]): string[] {
  return joints.flatMap(({ from, to }, index) => (found.includes(onPort(portKey(from))) && (found.includes(onPort(portKey(to))) || found.includes(keyOf(to.instance))) ? [onLine(index)] : []));
}

function circuitIn({ circuits }: Assembly, place: string): readonly string[] {
  const named = circuits.filter(({ name }) => place === sayCircuit(name));
  return named.length > 0 ? named.map(({ name }) => onCircuit(name)) : [onCar];
}
