/** The small formulas on their own, for checking a figure by hand. */
import { holdOff, proportioning } from "../core/balance/passage";
import { boosted, boreArea, linePressure } from "../core/balance/pedal";
import { inSeries, outletAt, straight } from "../core/balance/pressure-curve";
import { inBar, inPsi, inches, millimetres, newtons, pascals, poundsForce, type Newtons, type Pascals } from "../core/quantity";
import { badValue } from "./answer";
import { readNumber } from "./arguments";

export interface ValveArguments {
  readonly inlet: unknown;
  readonly split: unknown;
  readonly slope: unknown;
  readonly opens: unknown;
  readonly full: unknown;
  readonly limit: unknown;
  readonly unit: unknown;
}

/** Blank cells arrive as 0; "in" and "mm" are how the other functions name the two systems. */
const PRESSURE_UNITS = ["", "0", "in", "mm", "psi", "bar", "kpa", "mpa", "pa"];

/** Outlet pressure in the unit of the inlet pressure: every function of it scales. */
export function valveOutlet({ inlet, split, slope, opens, full, limit, unit }: ValveArguments): number {
  const named = word(unit);
  if (!PRESSURE_UNITS.includes(named)) throw badValue(`unit: read "${String(unit)}"; accepted: psi, bar, kPa, MPa or Pa, one for all the pressures.`);
  const [from, at, to, cut, share, most] = [readNumber("inlet", inlet), readNumber("opens", opens), readNumber("full", full), readNumber("split", split), readNumber("slope", slope), readNumber("limit", limit)];
  if (share !== undefined && share > 1) throw badValue(`slope: read "${String(slope)}"; accepted: 0 to 1.`);
  if (at === undefined && to !== undefined) throw badValue("full: opens is missing; a hold-off needs the pressure at which it begins to open.");
  if (at !== undefined && to !== undefined && to < at) throw badValue(`full: read "${String(full)}"; accepted: a pressure not below opens.`);
  const held = at === undefined ? straight : holdOff(pascals(at), pascals(to ?? at), pascals(0));
  const reduced = cut === undefined ? held : inSeries(held, proportioning(pascals(cut), share ?? 0));
  const limited = most === undefined ? reduced : inSeries(reduced, proportioning(pascals(most), 0));
  return outletAt(limited, pascals(from ?? 0));
}

export interface PedalArguments {
  readonly force: unknown;
  readonly ratio: unknown;
  readonly bore: unknown;
  readonly gain: unknown;
  readonly jumpIn: unknown;
  readonly cutIn: unknown;
  readonly mostAssist: unknown;
  readonly unit: unknown;
}

/** Line pressure in psi from lbf and inches, or in a metric unit from newtons and millimetres. */
export function pedalPressure({ force, ratio, bore, gain, jumpIn, cutIn, mostAssist, unit }: PedalArguments): number {
  const { isUs, show } = pedalUnit(unit);
  const need = (name: string, value: unknown): number => {
    const read = readNumber(name, value);
    if (read === undefined) throw badValue(`${name}: read nothing; accepted: a number above 0.`);
    return read;
  };
  const inForce = (value: number): Newtons => (isUs ? poundsForce(value) : newtons(value));
  const optional = (name: string, value: unknown): Newtons => inForce(readNumber(name, value) ?? 0);
  const [area, input, share, most] = [boreArea((isUs ? inches : millimetres)(need("bore", bore))), inForce((readNumber("force", force) ?? 0) * need("ratio", ratio)), readNumber("gain", gain), readNumber("most assist", mostAssist)];
  const assist = share === undefined ? undefined : { gain: share, jumpIn: optional("jump-in", jumpIn), cutIn: optional("cut-in", cutIn), most: most === undefined ? newtons(Infinity) : inForce(most), spring: newtons(0) };
  if (!assist && [jumpIn, cutIn, mostAssist].some((value) => word(value) !== "" && word(value) !== "0")) throw badValue("gain: read nothing; jump-in, cut-in and most assist are of a booster, which has a gain.");
  return show(linePressure(boosted(assist, input), area));
}

const METRIC: Readonly<Record<string, (pressure: Pascals) => number>> = { mm: inBar, bar: inBar, metric: inBar, n: inBar, kpa: (value) => value / 1e3, mpa: (value) => value / 1e6 };

function pedalUnit(unit: unknown): { readonly isUs: boolean; readonly show: (pressure: Pascals) => number } {
  const named = word(unit);
  const show = METRIC[named];
  if (show) return { isUs: false, show };
  if (["", "0", "in", "psi", "us", "lbf"].includes(named)) return { isUs: true, show: inPsi };
  throw badValue(`unit: read "${String(unit)}"; accepted: "in" (lbf, inches, psi), "mm" (N, millimetres, bar), "kPa" or "MPa".`);
}

const word = (value: unknown): string => String(value ?? "").trim().toLowerCase();
