/** Lengths and money as whole numbers, which is what the search counts in. */
import { inches, millimetres, type Metres } from "../quantity";

/** Tried in this order; one that measures every length exactly is taken. */
const LENGTH_UNITS: readonly Metres[] = [inches(1 / 32), millimetres(0.1), inches(1 / 1000)];
/** Where none does, lengths are rounded to this: needs up, what there is down. */
const ROUNDING_UNIT = millimetres(0.1);
/** Nearer than this part of a unit to a whole number is that number. */
const SAME = 1e-4;

export interface LengthUnit {
  readonly size: Metres;
  /** False when some length was rounded to the safe side. */
  readonly exact: boolean;
}

export function lengthUnitFor(lengths: readonly number[]): LengthUnit {
  const exact = LENGTH_UNITS.find((size) => lengths.every((length) => isWhole(length / size)));
  return { size: exact ?? ROUNDING_UNIT, exact: exact !== undefined };
}

export const upToWhole = (length: number, { size }: LengthUnit): number => Math.ceil(length / size - SAME);
export const downToWhole = (length: number, { size }: LengthUnit): number => Math.floor(length / size + SAME);

const isWhole = (number: number): boolean => Math.abs(number - Math.round(number)) < SAME;

/** Parts of the unit of money in which every price is whole: hundredths, or ten-thousandths, to which finer prices are rounded. */
export const moneyScaleFor = (prices: readonly number[]): number => (prices.every((price) => Math.abs(price * 100 - Math.round(price * 100)) < 1e-6) ? 100 : 10_000);
