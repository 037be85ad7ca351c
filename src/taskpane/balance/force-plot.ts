/**
 * The force plot as textbooks draw it: front braking force across, rear braking force up, both over the car's weight. Above the ideal
 * curve the rears use more grip than the fronts; lines of constant deceleration fall at 1 to 1, and on one adhesion each axle has its line.
 * The scales of the two axes differ, so that the room between the lines can be read.
 */
import { lockOf, pointAtDeceleration } from "../../core/balance/braking";
import type { CarBraking } from "../../core/balance/car-braking";
import type { UnderLoad } from "../../core/balance/judgement";
import { rearAhead } from "../../core/balance/rear-ahead";
import { valvePoints } from "../../core/balance/valve-points";
import { sayFigure } from "../../core/say-quantity";
import { frontLockLine, idealCurve, installedLine, rearLockLine, sameDeceleration } from "./chains";
import type { Spot, Window } from "./clip";
import { paperOf, type Paper } from "./paper";

/** Of the sheet, in units of the drawing. */
export const FORCES_HEIGHT = 248;

/** What the user looks at. */
export interface Choice {
  /** [g] */
  readonly z: number;
  readonly adhesion: number;
}

interface Plotted {
  readonly paper: Paper;
  readonly car: CarBraking;
  readonly under: UnderLoad;
  readonly upTo: number;
  readonly choice: Choice;
}

/** @param all every load of the car: the scales stay as they are when the load is changed */
export function forcePlot(car: CarBraking, under: UnderLoad, all: readonly UnderLoad[], choice: Choice): SVGElement[] {
  const upTo = car.facts.catalogue.settings.highestAdhesion;
  const paper = paperOf({ window: windowOf(all, upTo), steps: [0.2, 0.1], height: FORCES_HEIGHT, titles: ["front force ÷ weight", "rear force ÷ weight"] });
  const plotted = { paper, car, under, upTo, choice };
  const [installed, ideal] = [installedLine(under.braking, upTo), idealCurve(under.load.stance, upTo)];
  for (const chain of [installed, ideal]) paper.keepClear(chain);
  return [
    ...paper.sheet,
    ...decelerations(plotted),
    paper.hatch("ideal", ideal), paper.line("ideal", ideal),
    ...adhesionLines(plotted),
    ...rearAhead(under.braking).filter(({ from }) => from < upTo).map(({ from, to }) => paper.line("ahead", installedLine(under.braking, Math.min(to, upTo), from))),
    paper.line("installed", installed),
    ...marks(plotted),
    ...names(plotted),
  ];
}

function windowOf(all: readonly UnderLoad[], upTo: number): Window {
  const spots = all.flatMap(({ braking, load }) => [...installedLine(braking, upTo), ...idealCurve(load.stance, upTo)]);
  const most = (index: 0 | 1): number => Math.max(...spots.map((spot) => spot[index]));
  return { x: [0, Math.ceil(most(0) * 10 + 0.4) / 10], y: [0, Math.min(0.6, Math.ceil(most(1) * 20 + 1) / 20)] };
}

/** Every 0.2 g, named where the line leaves the paper. */
function decelerations({ paper, upTo, choice }: Plotted): SVGElement[] {
  const top = paper.plan.window.y[1];
  const each = Array.from({ length: Math.floor(upTo / 0.2 + 1e-9) }, (_, i) => (i + 1) / 5);
  return [
    ...each.flatMap((z) => [paper.line("same", sameDeceleration(z)), ...(z > top + 0.05 ? [paper.write("same", `${sayFigure(z)} g`, [[z - top, top]], ["above"])] : [])]),
    paper.line("chosen", sameDeceleration(choice.z)),
  ];
}

function adhesionLines({ paper, under: { load }, choice }: Plotted): SVGElement[] {
  const { x, y } = paper.plan.window;
  return [paper.line("front", frontLockLine(load.stance, choice.adhesion, y[1])), paper.line("rear", rearLockLine(load.stance, choice.adhesion, x[1]))];
}

/** Knees, locks and the chosen deceleration on the installed line, each with its own shape and word; the marks come first, so that no word hides one. */
function marks({ paper, car, under, upTo, choice }: Plotted): SVGElement[] {
  const { braking } = under;
  const knees = valvePoints(car, under).filter(({ z, does }) => z < upTo && does === "acts").flatMap(({ z, valve }) => { const point = pointAtDeceleration(braking, z); return point ? [{ valve, spot: spotOf(point) }] : []; });
  const locks = (["front", "rear"] as const).flatMap((axle) => { const lock = lockOf(braking, axle, choice.adhesion); return lock && lock.z <= upTo ? [{ axle, z: lock.z, spot: spotOf(lock) }] : []; });
  const chosen = pointAtDeceleration(braking, choice.z);
  const drawn = [
    ...(chosen ? [paper.mark("chosen", "dot", spotOf(chosen))] : []),
    ...locks.map(({ axle, spot }) => paper.mark(axle, axle === "front" ? "ring" : "cross", spot)),
    ...knees.map(({ spot }) => paper.mark("knee", "diamond", spot)),
  ];
  const words = [
    ...locks.map(({ axle, z, spot }) => paper.write(axle, `${axle}s lock ${sayFigure(z)} g`, [spot], ["below right", "below left", "right", "left", "below", "above left", "above", "above right"])),
    ...knees.map(({ valve, spot }) => paper.write("knee", `${valve} acts`, [spot], ["below right", "below", "right", "above left", "left"])),
  ];
  return [...words, ...drawn];
}

const spotOf = ({ front, rear }: { readonly front: number; readonly rear: number }): Spot => [front, rear];

function names({ paper, under: { load, braking }, upTo }: Plotted): SVGElement[] {
  const [ideal, installed] = [idealCurve(load.stance, upTo), installedLine(braking, upTo)];
  return [
    paper.write("ideal", "ideal", [12, 18, 8, 24].flatMap((i) => (ideal[i] ? [ideal[i]] : [])), ["above left", "above"]),
    paper.write("installed", "this car", installed.slice(-2).reverse(), ["above left", "below left", "above", "below", "right"]),
  ];
}
