/** The words of the Stock view. */
import { sayTube } from "../../core/tube";
import type { RackGroup } from "../../core/stock/rack";
import { metres } from "../../core/quantity";
import { sayLength, sayNumber, type Units } from "../words";

const DAY_ZERO = Date.UTC(1899, 11, 30);
const MILLISECONDS_PER_DAY = 86_400_000;

/** A spreadsheet's day number as the reader's language writes a date: `25 Nov 2026`. */
export const sayDay = (day: number): string =>
  new Date(DAY_ZERO + day * MILLISECONDS_PER_DAY).toLocaleDateString(undefined, { timeZone: "UTC", day: "numeric", month: "short", year: "numeric" });

/** `1,086.00 USD`. */
export const sayMoney = (amount: number, currency: string): string => `${sayNumber(amount, 2)} ${currency}`;

/** `Mild steel 3/16 in`. */
export const sayGroup = ({ material, outsideDiameter }: RackGroup): string => `${material.charAt(0).toUpperCase()}${material.slice(1)} ${sayTube(outsideDiameter)}`;

export const sayRate = (rate: number, units: Units): string => `${sayLength(metres(rate), units)} a week`;

export const sayStock = (length: number, units: Units): string => sayLength(metres(length), units);
