/** Money in exact decimals: prices are read as they are typed and rounded once a line, by the shop's rule. */
import Big from "big.js";
import type { Settings } from "./settings";

export interface RoundingRule {
  /** Smallest step of a price, as 0.01 or 0.05. */
  readonly step: number;
  readonly halves: "up" | "even";
}

export const roundingOf = ({ roundingStep, roundingHalves }: Settings): RoundingRule => ({ step: roundingStep, halves: roundingHalves });

/** Rounds an amount to the step; halves away from zero, or to the even step. */
export function rounded(amount: Big, { step, halves }: RoundingRule): Big {
  return amount.div(step).round(0, halves === "up" ? Big.roundHalfUp : Big.roundHalfEven).times(step);
}

export const sumOf = (amounts: readonly Big[]): Big => amounts.reduce((total, amount) => total.plus(amount), Big(0));
