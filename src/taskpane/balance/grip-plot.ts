/**
 * Adhesion utilisation over deceleration, as the braking regulations draw it: each axle's curve, the line where all grip is used (k = z),
 * and the efficiency line that the worse axle must stay under between 0.2 and 0.8.
 */
import { firstLock, pointAtDeceleration } from "../../core/balance/braking";
import type { UnderLoad } from "../../core/balance/judgement";
import type { Settings } from "../../core/settings";
import { sayFigure } from "../../core/say-quantity";
import { usedBy } from "./chains";
import type { Spot } from "./clip";
import type { Choice } from "./force-plot";
import { paperOf, type Paper } from "./paper";

/** Of the sheet, in units of the drawing. */
export const GRIP_HEIGHT = 264;

export function gripPlot(settings: Settings, { braking, range }: UnderLoad, choice: Choice): SVGElement[] {
  const upTo = settings.highestAdhesion;
  const paper = paperOf({ window: { x: [0, upTo], y: [0, upTo] }, steps: [0.2, 0.2], height: GRIP_HEIGHT, titles: ["deceleration, g", "grip used"] });
  const [front, rear, line] = [usedBy(braking, "front", upTo), usedBy(braking, "rear", upTo), limitLine(settings.efficiencyLine)];
  for (const chain of [front, rear, line]) paper.keepClear(chain);
  return [
    ...paper.sheet,
    paper.line("same", [[0, 0], [upTo, upTo]]),
    paper.hatch("limit", line), paper.line("limit", line),
    paper.line("range", [[range.from, 0], [range.to, 0]]),
    paper.line("chosen", [[choice.z, 0], [choice.z, upTo]]),
    paper.line("road", [[0, choice.adhesion], [upTo, choice.adhesion]]),
    paper.line("front-used", front), paper.line("rear-used", rear),
    ...marks(paper, braking, choice),
    paper.write("front", "front", spotsNear(front), ["above left", "below right"]),
    paper.write("rear", "rear", spotsNear(rear), ["below right", "above left"]),
    paper.write("limit", "limit", [0.35, 0.5, 0.65].map((k): Spot => [0.1 + settings.efficiencyLine * (k - 0.2), k]), ["above left", "left"]),
    paper.write("same", "all grip used", [0.7, 0.55, 0.85, 0.3].map((at): Spot => [at * upTo, at * upTo]), ["below right", "above left", "below"]),
  ];
}

/** k = 0.2 + (z - 0.1) / c for k from 0.2 to 0.8. */
export const limitLine = (coefficient: number): Spot[] => [[0.1, 0.2], [0.1 + 0.6 * coefficient, 0.8]];

function marks(paper: Paper, braking: UnderLoad["braking"], { z, adhesion }: Choice): SVGElement[] {
  const [chosen, lock] = [pointAtDeceleration(braking, z), firstLock(braking, adhesion)];
  const drawn = [
    ...(chosen ? [paper.mark("chosen", "dot", [z, chosen.frontUses]), paper.mark("chosen", "dot", [z, chosen.rearUses])] : []),
    ...(lock ? [paper.mark(lock.axle, lock.axle === "front" ? "ring" : "cross", [lock.z, adhesion])] : []),
  ];
  return [
    ...(lock ? [paper.write(lock.axle, `${lock.axle}s lock ${sayFigure(lock.z)} g`, [[lock.z, adhesion]], ["above left", "below right", "above", "below"])] : []),
    ...drawn,
  ];
}

const spotsNear = (chain: readonly Spot[]): Spot[] => [0.42, 0.5, 0.7, 0.3].map((x) => chain.find(([at]) => at >= x) ?? chain.at(-1) ?? [0, 0]);
