/** The same content as the drawing, in sentences: for its list, for screen readers, and for what was just picked. */
import { sayPort } from "../../core/assembly";
import { axleOf } from "../../core/component";
import { inInches } from "../../core/quantity";
import type { Run } from "../../core/runs";
import { sayTube } from "../../core/tube";
import { count, sayNumber, type Units } from "../words";
import { sayCircuit, sayEnd, sayInches, type Sketch, type SketchLine, type SketchPart, type SketchWheel } from "./sketch";

/** What the drawing is, in two sentences; all of it stands in the lists. */
export function describe({ name, model, driverSide, lines, faults, parts }: Sketch): string {
  const runs = lines.filter(({ run }) => run).length;
  const side = driverSide === undefined ? "The driver side is not known; the master is drawn on the left." : `The driver sits on the ${driverSide}, and the master is drawn there.`;
  return `${[name, model].filter((text) => text !== "").join(", ")}, nose up. ${side} ${count(parts.length, "part")}, ${count(runs, "run")} and ${count(faults.length, "flag")}; all of them are listed after the drawing.`;
}

export const sayRun = ({ joint, run, circuit }: SketchLine): string => `${run ? `${run.number}. ` : ""}${sayPort(joint.from)} to ${sayPort(joint.to)}, ${sayCircuit(circuit)}`;

/** Tube and length with their units, and how sure the length is. */
export function sayMade(run: Run, units: Units): string {
  const tube = run.tube === undefined ? "tube size not known" : `${sayTube(run.tube)} tube`;
  if (run.length === undefined) return `${tube}, length not known`;
  const length = units === "us" ? `${sayInches(inInches(run.length))} in` : `${sayNumber(run.length, 2)} m`;
  const over = run.over.length > 0 ? ` over ${run.over.join(", ")}` : "";
  return `${tube}, ${length} ${run.basis === "estimated" ? `estimated${over}` : (run.basis ?? "measured")}`;
}

export const sayEnds = (run: Run): string => `${sayEnd(run.a)}; ${sayEnd(run.b)}`;

export function sayWheel({ wheel, brake, hose }: SketchWheel): string {
  const side = wheel.startsWith("L") ? "left" : "right";
  const parts = [brake, hose].map((instance) => (instance === undefined ? undefined : instance.unnamed ? `${instance.component.kind === "hose" ? "hose" : "brake"} not known` : instance.component.name));
  return `${axleOf(wheel)} ${side} wheel (${wheel}): ${parts.filter((text) => text !== undefined).join(", ")}`;
}

export function sayPart({ label, kind, instance, ports, placed }: SketchPart): string {
  const loose = ports.filter(({ state }) => state !== "joined").map(({ name, state }) => `${name || "port"} ${STATE_WORDS[state]}`);
  const where = !placed ? "no place in the lines yet" : instance.place === undefined ? "place not known" : `at ${instance.place}`;
  return [`${label}, ${kind}, ${where}`, ...loose].join("; ");
}

const STATE_WORDS = { joined: "joined", plugged: "plugged", switch: "for a switch", open: "with no line" } as const;
