/** The lists beside the drawing. They hold all that it shows, and each line of them leads to its place on it. */
import { ended } from "../../core/finding";
import { saySeat } from "../../core/joint";
import type { CarReport } from "../../core/report";
import { element } from "../element";
import { severityMark } from "../marks";
import { severityWords, type Units } from "../words";
import { onFault, onLine, onPart, onPort, onWheel } from "./faults";
import type { Sketch, SketchLine } from "./sketch";
import { sayEnds, sayMade, sayPart, sayRun, sayWheel } from "./words";

export function listsOf(sketch: Sketch, { assumptions }: CarReport, units: Units): HTMLElement[] {
  const runs = sketch.lines.filter(({ run }) => run).sort((a, b) => (a.run?.number ?? 0) - (b.run?.number ?? 0));
  const joints = sketch.lines.filter(({ joint, run }) => !run && joint.by === "direct");
  const outside = sketch.lines.filter(({ joint, run }) => !run && joint.by === "line");
  return [
    list("Flags, by their letters", faultItems(sketch)),
    list("Runs of hard line", runs.map((line) => runItem(line, units))),
    folded("Lines outside this quote", outside.map((line) => item(onLine(line.index), sayRun(line)))),
    folded("Screwed straight in", joints.map((line) => item(onLine(line.index), sayRun(line)))),
    folded("Parts and wheels", [...sketch.parts.map((part) => item(onPart(part.label), sayPart(part))), ...sketch.wheels.map((wheel) => item(onWheel(wheel.wheel), capital(sayWheel(wheel))))]),
    folded("Ports", sketch.parts.flatMap(({ ports }) => ports.map(({ key }) => item(onPort(key), sayPort(sketch, onPort(key)))))),
    folded("Taken for granted", assumptions.map((text) => element("li", {}, `${capital(text)}.`))),
  ].filter((made) => made !== undefined);
}

/** What was picked on the drawing, in a sentence under it. */
export function sayPicked(sketch: Sketch, key: string): string {
  const fault = sketch.faults.find(({ letter }) => onFault(letter) === key);
  if (fault) return `${fault.letter}. ${severityWords[fault.finding.severity].name}: ${fault.finding.says} Cure: ${ended(fault.finding.cure)}`;
  const line = sketch.lines.find(({ index }) => onLine(index) === key);
  if (line) return `Run ${sayRun(line)}${line.run ? `: ${line.size}. ${sayEnds(line.run)}.` : "."}`.replace(/^Run (?!\d)/, "");
  const part = sketch.parts.find(({ label }) => onPart(label) === key);
  if (part) return `${sayPart(part)}.`;
  const wheel = sketch.wheels.find((one) => onWheel(one.wheel) === key);
  return wheel ? `${capital(sayWheel(wheel))}.` : sayPort(sketch, key);
}

function sayPort({ parts, lines }: Sketch, key: string): string {
  const found = parts.flatMap((part) => part.ports.map((port) => ({ part, port }))).find(({ port }) => onPort(port.key) === key);
  if (!found) return "";
  const { thread, seat } = found.port.port;
  const line = lines.find(({ ends }) => ends.some((end) => end.key === found.port.key));
  return `${found.part.label} ${found.port.name}: ${thread?.name ?? "thread not known"}, ${seat ? `${saySeat(seat)} seat` : "seat not known"}. ${line ? sayRun(line) : "No line."}`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function list(heading: string, items: readonly HTMLElement[]): HTMLElement | undefined {
  if (items.length === 0) return undefined;
  return element("section", { class: "drawing__list" }, element("h3", { class: "drawing__heading" }, heading), element("ol", {}, ...items));
}

/** What one looks up rather than reads through. */
function folded(heading: string, items: readonly HTMLElement[]): HTMLElement | undefined {
  if (items.length === 0) return undefined;
  return element("details", { class: "drawing__list" }, element("summary", { class: "drawing__heading" }, `${heading} (${items.length})`), element("ol", {}, ...items));
}

const item = (key: string, text: string): HTMLElement => element("li", {}, element("button", { type: "button", class: "link", "data-key": key }, text));

function runItem(line: SketchLine, units: Units): HTMLElement {
  const { run } = line;
  const made = item(onLine(line.index), sayRun(line));
  if (run) made.append(element("p", {}, `${capital(sayMade(run, units))}.`), element("p", { class: "drawing__ends" }, `${sayEnds(run)}.`), ...run.problems.map((problem) => element("p", { class: "drawing__problem" }, `${capital(problem)}.`)));
  return made;
}

const faultItems = ({ faults }: Sketch): HTMLElement[] => faults.map(({ letter, finding: { severity, place, says, cure } }) =>
  element("li", { class: "drawing__fault" }, severityMark(severity),
    element("div", {},
      element("button", { type: "button", class: "link", "data-fault": letter }, `${letter}. ${severityWords[severity].name}, ${place}`),
      element("p", {}, says), element("p", {}, `Cure: ${ended(cure)}`))));
