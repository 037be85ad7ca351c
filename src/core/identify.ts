/** Names a valve body or master cylinder from the ports somebody saw and measured on it. */
import type { Catalogue } from "./catalogue";
import type { Component, ComponentKind, Port } from "./component";
import type { Gender } from "./joint";
import { placeKey } from "./assembly";
import type { Metres } from "./quantity";
import { readThread } from "./thread-reading";
import type { NearMissLimits, Thread } from "./thread";

/** One port as seen: what was measured, or the thread where somebody is sure of it. */
export interface SeenPort {
  readonly label: string;
  readonly diameter?: Metres | undefined;
  readonly pitch?: Metres | undefined;
  readonly gender?: Gender | undefined;
  readonly thread?: Thread | undefined;
  readonly side?: string | undefined;
}

export interface SeenBody {
  readonly ports: readonly SeenPort[];
  readonly place?: string | undefined;
  /** A wire goes to it. */
  readonly wire?: boolean | undefined;
}

export interface PortMatch {
  readonly seen: SeenPort;
  readonly port: Port;
}

export interface Identification {
  readonly component: Component;
  readonly matched: readonly PortMatch[];
  /** Seen, but this part has no port for it: it is another part, or the reading is off. */
  readonly unexplained: readonly SeenPort[];
  /** On this part, but not seen: worth a second look. */
  readonly notSeen: readonly Port[];
  /** What speaks against it besides ports. */
  readonly against: readonly string[];
}

const IDENTIFIED: ReadonlySet<ComponentKind> = new Set([
  "master", "distribution-block", "hold-off-valve", "proportioning-valve", "adjustable-proportioning-valve", "combination-valve", "residual-valve", "anti-lock-unit", "tee", "union",
]);

/**
 * Ranks the catalogue's bodies against what was seen: fewest unexplained ports, then fewest unseen ones, then least against it.
 * @param threads the list a reading is named from
 */
export function identify(catalogue: Catalogue, threads: readonly Thread[], body: SeenBody): Identification[] {
  const { nearMissDiameter, nearMissPitchShare } = catalogue.settings;
  const candidates = body.ports.map((seen) => threadsOf(threads, seen, { diameter: nearMissDiameter, pitchShare: nearMissPitchShare }));
  return [...catalogue.components.values()]
    .filter(({ kind }) => IDENTIFIED.has(kind))
    .map((component) => compare(component, body, candidates))
    .filter(({ matched }) => matched.length > 0)
    .sort((a, b) => a.unexplained.length - b.unexplained.length || a.notSeen.length - b.notSeen.length || a.against.length - b.against.length || (a.component.name < b.component.name ? -1 : 1));
}

/** The port whose thread would tell two candidates apart; undefined when their ports are alike. */
export function decidingPort(first: Identification, second: Identification): Port | undefined {
  const others = second.component.ports.map(portSignature);
  return first.component.ports.find((port) => {
    const index = others.indexOf(portSignature(port));
    if (index < 0) return true;
    others.splice(index, 1);
    return false;
  });
}

const portSignature = ({ thread, gender, use }: Port): string => `${thread?.name ?? "?"}|${gender}|${use}`;

/** Names of the threads a seen port may have; undefined when nothing was measured, so any will do. */
function threadsOf(threads: readonly Thread[], seen: SeenPort, limits: NearMissLimits): ReadonlySet<string> | undefined {
  if (seen.thread) return new Set([seen.thread.name]);
  if (seen.diameter === undefined) return undefined;
  const read = readThread(threads, { diameter: seen.diameter, pitch: seen.pitch, gender: seen.gender ?? "female" }, limits);
  const fitting = read.filter(({ match }) => match === "fits");
  return new Set((fitting.length > 0 ? fitting : read.slice(0, 1)).map(({ thread }) => thread.name));
}

function compare(component: Component, body: SeenBody, candidates: readonly (ReadonlySet<string> | undefined)[]): Identification {
  const ports = component.ports.filter(({ use }) => use !== "bleed");
  const matched = matchPorts(ports, body.ports, candidates);
  const hasSwitch = ports.some(({ use }) => use === "switch");
  const against = [
    ...(body.wire !== undefined && body.wire !== hasSwitch ? [hasSwitch ? "it has a switch port and no wire was seen" : "a wire was seen and it has no switch port"] : []),
    ...(body.place !== undefined && component.place !== undefined && placeKey(body.place) !== placeKey(component.place) ? [`it is usually at ${component.place}`] : []),
  ];
  const used = new Set(matched.map(({ port }) => port));
  return { component, matched, unexplained: body.ports.filter((seen) => !matched.some((one) => one.seen === seen)), notSeen: ports.filter((port) => !used.has(port)), against };
}

/** Largest matching of seen ports to ports of the part (augmenting paths, Kuhn 1955), so that no order of listing loses one. */
function matchPorts(ports: readonly Port[], seen: readonly SeenPort[], candidates: readonly (ReadonlySet<string> | undefined)[]): PortMatch[] {
  const takenBy = new Map<Port, number>();
  const fits = (index: number, port: Port): boolean => {
    const one = seen[index];
    const threads = candidates[index];
    if (!one || (one.gender !== undefined && one.gender !== port.gender)) return false;
    if (one.side !== undefined && port.side !== undefined && one.side.trim().toLowerCase() !== port.side.trim().toLowerCase()) return false;
    return threads === undefined || port.thread === undefined || threads.has(port.thread.name);
  };
  const place = (index: number, tried: Set<Port>): boolean =>
    ports.some((port) => {
      if (tried.has(port) || !fits(index, port)) return false;
      tried.add(port);
      const holder = takenBy.get(port);
      if (holder !== undefined && !place(holder, tried)) return false;
      takenBy.set(port, index);
      return true;
    });
  seen.forEach((_, index) => place(index, new Set()));
  return [...takenBy].flatMap(([port, index]) => (seen[index] ? [{ seen: seen[index], port }] : []));
}
