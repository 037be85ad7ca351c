/** The panel's own marks, drawn as a fitter sketches: told apart by shape, with the word always beside them. */
import type { Severity } from "../core/finding";
import type { CarGroup } from "./car-list";
import { drawing } from "./element";
import type { FlagGroup } from "./flags";

/** Paths in a square of 20 units; the outline is drawn with the line's own width. */
export const severityPaths: Readonly<Record<Severity, readonly string[]>> = {
  // a nut seen end on, closed by a bar
  stop: ["M6 3h8l4 7-4 7H6L2 10z", "M6.5 10h7"],
  // a line that parts: one way or the other
  decide: ["M10 18v-7", "M10 11 3.5 3.5", "M10 11l6.5-7.5", "M3 7V3h4", "M17 7V3h-4"],
  // a pressure gauge
  watch: ["M10 2.5a7.5 7.5 0 1 1 0 15a7.5 7.5 0 0 1 0-15z", "M10 10.5 13.6 6.6", "M10 14.5v.2"],
  // a slip of paper with a written line
  note: ["M4 2.5h8.5L16 6v11.5H4z", "M7 9h6", "M7 13h4"],
};

/** Hidden from screen readers: the word beside it says the same. */
export const severityMark = (severity: Severity): SVGSVGElement =>
  drawing("svg", { class: `mark mark--${severity}`, viewBox: "0 0 20 20", "aria-hidden": true, focusable: "false" }, ...severityPaths[severity].map((d) => drawing("path", { d })));

/** What is settled is a slip signed off. */
export const flagMark = (group: FlagGroup): SVGSVGElement =>
  group === "settled" ? drawing("svg", { class: "mark mark--settled", viewBox: "0 0 20 20", "aria-hidden": true, focusable: "false" }, ...["M4 2.5h8.5L16 6v11.5H4z", "M6.5 11.5 9 14l4.5-6"].map((d) => drawing("path", { d }))) : severityMark(group);

/** A sound car has a tick of its own; the others have the mark of their worst finding. */
export const carMark = (group: CarGroup): SVGSVGElement =>
  group === "sound"
    ? drawing("svg", { class: "mark mark--sound", viewBox: "0 0 20 20", "aria-hidden": true, focusable: "false" }, drawing("path", { d: "M3.5 11 8 15.5 16.5 4.5" }))
    : severityMark(group === "hold" ? "stop" : group);

/**
 * A length of tube with a flare and a nut at each end, drawn to scale beside the longest of its list; the estimated part is dashed.
 * @param share of the longest, above 0 to 1
 * @param estimated share of this tube that is estimated, 0 to 1
 */
export function tubeDrawing(share: number, estimated: number): SVGSVGElement {
  const end = Math.max(SHORTEST, Math.round(share * FULL_WIDTH));
  const inner = end - 2 * FLARE;
  const turn = FLARE + inner * (1 - estimated);
  const nut = (x: number): SVGRectElement => drawing("rect", { class: "tube__nut", x, y: 2, width: 5, height: 10, rx: 1 });
  return drawing("svg", { class: "tube__drawing", viewBox: `0 0 ${FULL_WIDTH} 14`, preserveAspectRatio: "xMinYMid meet", "aria-hidden": true, focusable: "false" },
    drawing("path", { class: "tube__wall", d: `M1 3 ${FLARE} 5H${turn}M1 11 ${FLARE} 9H${turn}M${end - FLARE} 5 ${end - 1} 3M${end - FLARE} 9 ${end - 1} 11` }),
    estimated > 0 ? drawing("path", { class: "tube__wall tube__wall--estimated", d: `M${turn} 5H${end - FLARE}M${turn} 9H${end - FLARE}` }) : undefined,
    nut(FLARE + 1), nut(end - FLARE - 6));
}

const FULL_WIDTH = 200;
/** Room that one flare takes. */
const FLARE = 3;
/** Any shorter, and the two nuts would overlap. */
const SHORTEST = 28;
