/** Names a valve body or master cylinder from the ports somebody saw and measured on it. */
import { placeKey } from "./assembly";
import type { Catalogue } from "./catalogue";
import type { Component, ComponentKind, Port } from "./component";
import { matchPorts, type PortMatch } from "./port-matching";
import { readingLikelihood } from "./reading-likelihood";
import type { SeenBody, SeenPort } from "./seen-body";
import type { Settings } from "./settings";
import type { Thread } from "./thread";

export interface Identification {
  readonly component: Component;
  /** That it is this part, 0 to 1, among all listed bodies and one that is not listed. */
  readonly probability: number;
  readonly matched: readonly PortMatch[];
  /** Seen, but no port of this part explains it: it is another part, or the reading is off. */
  readonly unexplained: readonly SeenPort[];
  /** On this part, but not seen: worth a second look. */
  readonly notSeen: readonly Port[];
  /** What speaks against it besides ports. */
  readonly against: readonly string[];
}

export interface Identified {
  /** Every listed body with a port like one of those seen, most probable first. */
  readonly ranked: readonly Identification[];
  /** That none of them is it. */
  readonly notListed: number;
}

const IDENTIFIED: ReadonlySet<ComponentKind> = new Set([
  "master", "distribution-block", "hold-off-valve", "proportioning-valve", "adjustable-proportioning-valve", "combination-valve", "residual-valve", "anti-lock-unit", "tee", "union",
]);

/**
 * Ranks the catalogue's bodies by how likely they are to show what was seen, all of them alike beforehand. A port is seen, overlooked or misread
 * by the chances in Settings; which seen port is which of the part's is summed over every way to match them.
 * @param threads the list that an unknown thread is taken to be from
 * @source Bayes' rule; the sum over matchings makes the order in which ports are told irrelevant
 */
export function identify(catalogue: Catalogue, threads: readonly Thread[], body: SeenBody): Identified {
  const { settings } = catalogue;
  const bodies = [...catalogue.components.values()].filter(({ kind }) => IDENTIFIED.has(kind));
  const seen = body.ports.map((port) => ({ port, anyThread: meanLikelihood(threads, port, settings) }));
  const judged = bodies.map((component) => judge(component, body, seen, settings));
  const listed = judged.map(({ likelihood }) => ((1 - settings.bodyNotListed) / bodies.length) * likelihood);
  const unlisted = settings.bodyNotListed * seen.reduce((product, { anyThread }, index) => product * anyThread * (index + 1) * (1 - settings.portOverlooked), 1);
  const total = listed.reduce((sum, one) => sum + one, unlisted);
  const ranked = judged.map(({ found }, index) => ({ ...found, probability: total === 0 ? 0 : (listed[index] ?? 0) / total }));
  const byProbability = ranked.filter(({ matched }) => matched.length > 0).sort((a, b) => b.probability - a.probability || (a.component.name < b.component.name ? -1 : 1));
  return { ranked: byProbability, notListed: total === 0 ? 1 : unlisted / total };
}

/** How likely a reading is on a thread nobody knows: the mean over the list. A port seen and not measured says nothing of its thread. */
function meanLikelihood(threads: readonly Thread[], port: SeenPort, settings: Settings): number {
  if (port.thread) return 1 / threads.length;
  if (port.diameter === undefined) return 1;
  const { diameter, pitch } = port;
  return threads.reduce((sum, thread) => sum + readingLikelihood(thread, port.gender ?? "female", { diameter, pitch }, spreadOf(settings)), 0) / threads.length;
}

const spreadOf = (settings: Settings) => ({ diameter: settings.diameterSpread, pitch: settings.pitchSpread });

interface SeenAndMean {
  readonly port: SeenPort;
  readonly anyThread: number;
}

interface Judged {
  readonly likelihood: number;
  readonly found: Omit<Identification, "probability">;
}

function judge(component: Component, body: SeenBody, seen: readonly SeenAndMean[], settings: Settings): Judged {
  const ports = component.ports.filter(({ use }) => use !== "bleed");
  const { likelihood, matched } = matchPorts(ports, seen.map(({ port }) => port), {
    matching: (port, index) => portLikelihood(port, seen[index] as SeenAndMean, settings),
    stray: (index) => settings.readingMistaken * (seen[index]?.anyThread ?? 0),
    overlooked: settings.portOverlooked,
  });
  const remarks = remarksOf(component, body);
  const against = remarks.flatMap((remark) => remark ?? []);
  const told = remarks.reduce((product, remark) => product * (remark === undefined ? 1 - settings.remarkMistaken : settings.remarkMistaken), 1);
  const used = new Set(matched.map(({ port }) => port));
  return {
    likelihood: likelihood * told,
    found: { component, matched, against, unexplained: body.ports.filter((one) => !matched.some(({ seen: explained }) => explained === one)), notSeen: ports.filter((port) => !used.has(port)) },
  };
}

/** Of one seen port being one port of a part: read right, and read wrong. */
function portLikelihood(port: Port, { port: seen, anyThread }: SeenAndMean, settings: Settings): { readonly right: number; readonly wrong: number } {
  const { readingMistaken, remarkMistaken } = settings;
  const agrees = (told: string | undefined, own: string | undefined): number => (told === undefined || own === undefined ? 1 : told.trim().toLowerCase() === own.trim().toLowerCase() ? 1 - remarkMistaken : remarkMistaken);
  const remarks = agrees(seen.gender, port.gender) * agrees(seen.side, port.side);
  return { right: (1 - readingMistaken) * remarks * onThread(port, seen, anyThread, settings), wrong: readingMistaken * remarks * anyThread };
}

function onThread({ thread, gender }: Port, seen: SeenPort, anyThread: number, settings: Settings): number {
  if (thread === undefined) return anyThread;
  if (seen.thread) return seen.thread.name === thread.name ? 1 : 0;
  if (seen.diameter === undefined) return 1;
  return readingLikelihood(thread, gender, { diameter: seen.diameter, pitch: seen.pitch }, spreadOf(settings));
}

/** Where the row does not say, a switch port that is not plugged has a switch in it, and a wire to that. */
export const hasWire = ({ wire, ports }: Component): boolean => wire ?? ports.some(({ use, plugged }) => use === "switch" && !plugged);

/** What was told of the body as a whole: undefined where it agrees, a sentence where it does not; what was not told is not listed. */
function remarksOf(component: Component, { wire, place }: SeenBody): (string | undefined)[] {
  const electric = hasWire(component);
  const onWire = wire === electric ? undefined : electric ? "a wire belongs to it and none was seen" : "a wire was seen and it has no switch port";
  const onPlace = place === undefined || component.place === undefined || placeKey(place) === placeKey(component.place) ? undefined : `it is usually at ${component.place}`;
  return [...(wire === undefined ? [] : [onWire]), ...(place === undefined || component.place === undefined ? [] : [onPlace])];
}
