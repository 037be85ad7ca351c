/** How much brake fluid a car takes, and in which bottles. */
import Big from "big.js";
import type { Instance } from "./assembly";
import type { Fluid } from "./car";
import type { Catalogue, FluidBottle } from "./catalogue";
import { sumPrices } from "./fittings";
import { cubicMetres, metres, type CubicMetres, type Metres } from "./quantity";
import type { CarReport } from "./report";
import type { Run } from "./runs";

export interface FluidNeed {
  /** Undefined when the row names none, or more than one. */
  readonly fluid: Fluid | undefined;
  readonly lines: CubicMetres;
  readonly parts: CubicMetres;
  /** Lines and parts, once full. */
  readonly fill: CubicMetres;
  /** With what runs through while flushing and bleeding. */
  readonly withFlush: CubicMetres;
  readonly bottles: readonly { readonly bottle: FluidBottle; readonly count: number }[];
  /** Undefined when no listed bottle holds this fluid, or one has no price. */
  readonly price: number | undefined;
  /** Why there are no bottles, where there are none. */
  readonly noBottles: string | undefined;
  /** What is not in the figures, so that they are the least. */
  readonly leftOut: readonly string[];
}

/** Fill volume of runs, hoses, cylinders, calipers and master, times the flush factor of Settings, in whole bottles at least cost. */
export function fluidFor(catalogue: Catalogue, { assembly, runs, car }: Pick<CarReport, "assembly" | "runs" | "car">): FluidNeed {
  const measured = runs.flatMap((run) => volumeOfRun(run) ?? []);
  const unmeasured = runs.length - measured.length;
  const holding = assembly.instances.filter(holdsFluid);
  const lines = sum(measured);
  const parts = sum(holding.flatMap(({ component }) => component.fluidHeld ?? []));
  const fill = cubicMetres(lines + parts);
  const withFlush = cubicMetres(fill * catalogue.settings.flushFactor);
  const fluid = car.fluids.length === 1 ? car.fluids[0] : undefined;
  const bottles = cheapestBottles(catalogue.fluids.filter((bottle) => bottle.fluid === fluid), withFlush);
  const price = bottles.length === 0 ? undefined : sumPrices(bottles.map(({ bottle, count }) => (bottle.price === undefined ? undefined : Big(bottle.price).times(count).toNumber())));
  return { fluid, lines, parts, fill, withFlush, bottles, price, noBottles: bottles.length > 0 ? undefined : whyNoBottles(car.fluids, withFlush), leftOut: [...silentParts(holding), ...(unmeasured > 0 ? [`${unmeasured} ${unmeasured === 1 ? "line" : "lines"} without length or wall`] : [])] };
}

function whyNoBottles(fluids: readonly Fluid[], needed: CubicMetres): string {
  if (fluids.length === 0) return "which fluid is not stated";
  if (fluids.length > 1) return `the row names ${fluids.join(" and ")}, and bottles are of one fluid only`;
  return needed > 0 ? `Fluids lists no bottle of ${fluids[0] ?? ""}` : "no volume is known";
}

/**
 * Volume inside a run.
 * @returns bore area times length [m3]; undefined without length or wall
 * @source geometry: V = π/4 (D - 2t)² L
 */
export function volumeOfRun({ tube, stock, length }: Pick<Run, "tube" | "stock" | "length">): CubicMetres | undefined {
  if (tube === undefined || stock === undefined || length === undefined) return undefined;
  return boreVolume(metres(tube - 2 * stock.wall), length);
}

const boreVolume = (bore: Metres, length: Metres): CubicMetres => cubicMetres((Math.PI / 4) * bore ** 2 * length);
const sum = (volumes: readonly CubicMetres[]): CubicMetres => cubicMetres(volumes.reduce((total, volume) => total + volume, 0));

/** A valve holds next to nothing; what counts is the master with its reservoir, hoses, calipers and cylinders. */
const holdsFluid = ({ component, unnamed }: Instance): boolean => !unnamed && ["master", "hose", "disc", "drum"].includes(component.kind);

const silentParts = (instances: readonly Instance[]): string[] =>
  [...new Set(instances.filter(({ component }) => component.fluidHeld === undefined).map(({ component }) => `what ${component.name} holds`))];

/** Whole bottles that hold the volume at least cost; unpriced bottles cost most. Exact for the few sizes a shop keeps. */
function cheapestBottles(sizes: readonly FluidBottle[], needed: CubicMetres): FluidNeed["bottles"] {
  const [first, ...rest] = sizes;
  if (!first || needed <= 0) return [];
  const most = Math.ceil(needed / first.bottle - 1e-9);
  const options = rest.length === 0 ? [most] : Array.from({ length: most + 1 }, (_, count) => count);
  const plans = options.map((count) => [...(count > 0 ? [{ bottle: first, count }] : []), ...cheapestBottles(rest, cubicMetres(needed - count * first.bottle))]);
  const full = plans.filter((plan) => plan.reduce((held, { bottle, count }) => held + bottle.bottle * count, 0) >= needed - 1e-12);
  return full.sort((a, b) => costOf(a) - costOf(b) || a.length - b.length)[0] ?? [];
}

const costOf = (plan: FluidNeed["bottles"]): number => plan.reduce((total, { bottle, count }) => total + (bottle.price ?? 1e6) * count, 0);
