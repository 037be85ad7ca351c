/** The one further look or measurement that would tell two candidates for a body apart. */
import { placeKey } from "./assembly";
import type { Component, Port } from "./component";
import { hasWire, type Identification } from "./identify";
import { externalMajorWindow, internalMinorWindow } from "./thread";

export interface DecidingMeasurement {
  /** What to look at or measure, and what each candidate would show. */
  readonly says: string;
  /** False when nothing outside the two tells them apart. */
  readonly decides: boolean;
}

/** Prefers a port not seen yet, and among those the one whose thread lies farthest from any that the other part has to spare. */
export function decidingMeasurement(first: Identification, second: Identification): DecidingMeasurement {
  const [mine, theirs] = [withoutTwins(first.component, second.component), withoutTwins(second.component, first.component)];
  const port = farthest(first, mine, theirs);
  if (port) return { decides: true, says: sayPorts(port, first.component, theirs, second.component) };
  const other = farthest(second, theirs, mine);
  if (other) return { decides: true, says: sayPorts(other, second.component, mine, first.component) };
  const [a, b] = [first.component, second.component];
  if (a.place !== undefined && b.place !== undefined && placeKey(a.place) !== placeKey(b.place)) return { decides: true, says: `where it is mounted: ${a.place} (${a.name}) or ${b.place} (${b.name})` };
  if (hasWire(a) !== hasWire(b)) return { decides: true, says: `whether a wire goes to it: yes for ${(hasWire(a) ? a : b).name}, no for ${(hasWire(a) ? b : a).name}` };
  const contents = JSON.stringify(a.passages) !== JSON.stringify(b.passages);
  return { decides: false, says: `none: ${b.name} has the same ports${contents ? " and other contents" : ""}` };
}

/** The ports of one part that the other has no port like. */
function withoutTwins(one: Component, other: Component): Port[] {
  const spare = other.ports.map(likeness);
  return one.ports.filter((port) => {
    const index = port.use === "bleed" ? 0 : spare.indexOf(likeness(port));
    if (port.use !== "bleed" && index >= 0) spare.splice(index, 1);
    return port.use !== "bleed" && index < 0;
  });
}

const likeness = ({ thread, gender, use }: Port): string => `${thread?.name ?? "?"}|${gender}|${use === "switch" ? "switch" : "line"}`;

function farthest({ notSeen }: Identification, ports: readonly Port[], others: readonly Port[]): Port | undefined {
  const worth = (port: Port): number => (notSeen.includes(port) ? 1 : 0) + Math.min(0.9, ...others.map((other) => apart(port, other) * 100));
  return [...ports].sort((a, b) => worth(b) - worth(a))[0];
}

/** Distance of two threads as a caliper reads them [m]; a tenth of a metre where one is not known. */
function apart(a: Port, b: Port): number {
  if (!a.thread || !b.thread || a.gender !== b.gender) return 0.1;
  const windowOf = a.gender === "male" ? externalMajorWindow : internalMinorWindow;
  const [one, other] = [windowOf(a.thread), windowOf(b.thread)];
  return Math.max(0, one.least - other.most, other.least - one.most);
}

function sayPorts(port: Port, owner: Component, others: readonly Port[], other: Component): string {
  const counterpart = others.find(({ name }) => name === port.name) ?? others[0];
  const there = counterpart ? `${sayThread(counterpart, port)} on ${other.name}` : `not on ${other.name}`;
  return `${port.name}: ${sayThread(port, counterpart)} on ${owner.name}, ${there}`;
}

/** Of two ports with one thread, what else they differ in is said with it. */
function sayThread({ thread, gender, use }: Port, other: Port | undefined): string {
  const name = thread?.name ?? "a thread not stated";
  if (!other || other.thread?.name !== thread?.name) return name;
  if (other.gender !== gender) return `${gender} ${name}`;
  return `${name} for a ${use === "switch" ? "switch" : "line"}`;
}
