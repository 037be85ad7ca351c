/** Which port of a part stands on which of its edges, in which order, and what is written there. */
import { blockOf, type Block, type Edge, type PortWriting } from "./block";
import { onLine, onPart, onPort } from "./faults";
import { isFront, isLeft, type Between } from "./links";
import type { Arrangement, PlacedItem, Scene } from "./scene";
import { sayCircuit, type Sketch, type SketchPart, type SketchPort } from "./sketch";

/** A scene as far as it is arranged: ports turn to where the other ends of their lines stand now. */
export interface Arranged extends Scene {
  readonly arrangement: Arrangement;
}

export function blockFor(arranged: Arranged, part: SketchPart, row: number): Block {
  const at = part.ports.map((port) => ({ port, ...edgeOf(arranged, part, { port, row }) }));
  const along = (edge: Edge): PortWriting[] => at.filter((one) => one.edge === edge).sort((a, b) => a.toward - b.toward).map(({ port, writing }) => ({ port, ...writing }));
  return blockOf(part, { top: along("top"), bottom: along("bottom"), left: along("left"), right: along("right") }, { badges: arranged.marked.get(onPart(part.label)) ?? 0, mirrored: isAcross(arranged.sketch, part, true) });
}

interface AtEdge {
  readonly edge: Edge;
  /** What decides the order along the edge. */
  readonly toward: number;
  readonly writing: Omit<PortWriting, "port">;
}

function edgeOf(arranged: Arranged, part: SketchPart, { port, row }: { readonly port: SketchPort; readonly row: number }): AtEdge {
  const { links, marked } = arranged;
  const badges = marked.get(onPort(port.key)) ?? 0;
  const between = links.between.find(({ upper, lower }) => upper.end.key === port.key || lower.end.key === port.key);
  if (between) return betweenEdge(arranged, between, { badges, isUpper: between.upper.end.key === port.key });
  const toWheel = links.toWheel.find(({ from }) => from.end.key === port.key);
  if (!toWheel) return { edge: port.port.flow === "in" ? "top" : "bottom", toward: LAST, writing: { nut: sayLoose(port, badges), badges, run: undefined } };
  const left = isLeft(toWheel.to.wheel);
  const writing = { nut: toWheel.from.end.nut, badges, run: undefined };
  if (isAlone(arranged.arrangement.rows[row] ?? []) && !isAcross(arranged.sketch, part, left)) return { edge: left ? "left" : "right", toward: isFront(toWheel.to.wheel) ? 0 : 1, writing };
  return { edge: isFront(toWheel.to.wheel) ? "top" : "bottom", toward: left ? -LAST : LAST, writing };
}

/** A port without a line is open only where a fault says so: on a car whose lines are not known it is unknown. */
const sayLoose = ({ state }: SketchPort, faults: number): string => (state === "plugged" ? "plug" : faults > 0 ? "open" : "");

/** Further over than any place in a row. */
const LAST = 1e6;

function betweenEdge({ arrangement, marked }: Arranged, { line, upper, lower }: Between, { badges, isUpper }: { readonly badges: number; readonly isUpper: boolean }): AtEdge {
  const [own, other] = isUpper ? [upper, lower] : [lower, upper];
  const next = arrangement.rows[own.row + (isUpper ? 1 : -1)] ?? [];
  const found = next.find(({ item }) => ("passing" in item ? item.passing === line : item.part === other.part));
  const run = isUpper && line.run ? { circuit: sayCircuit(line.circuit), size: line.size, badges: marked.get(onLine(line.index)) ?? 0 } : undefined;
  return { edge: isUpper ? "bottom" : "top", toward: (found ? found.left + found.width / 2 : 0) + line.index * 1e-6, writing: { nut: own.end.nut, badges, run } };
}

/** The master stands on the driver's side; a line from its other side would keep it from there. */
const isAcross = ({ driverSide }: Sketch, part: SketchPart, left: boolean): boolean => part.instance.component.kind === "master" && left === (driverSide === "right");

/** Lines leave sideways only from a box that has its row to itself: beside another one the writing would make the whole car wider. */
const isAlone = (items: readonly PlacedItem[]): boolean => items.filter(({ item }) => "part" in item).length === 1;
