/** The words of the Stock view. */
import { sayTube } from "../../core/tube";
import type { RackGroup } from "../../core/stock/rack";
import { capital } from "../../core/finding";
import { metres } from "../../core/quantity";
import { decimalsOfMoney } from "../../core/say-money";
import type { Settings } from "../../core/settings";
import { localeHere } from "../locale";
import { sayLength, sayNumber, type Units } from "../words";

const DAY_ZERO = Date.UTC(1899, 11, 30);
const MILLISECONDS_PER_DAY = 86_400_000;

/** A spreadsheet's day number as the reader's language writes a date: `25 Nov 2026`. */
export const sayDay = (day: number): string =>
  new Date(DAY_ZERO + day * MILLISECONDS_PER_DAY).toLocaleDateString(localeHere(), { timeZone: "UTC", day: "numeric", month: "short", year: "numeric" });

/** `1,086.00 USD`. */
export const sayPrice = (amount: number, settings: Pick<Settings, "roundingStep" | "currency">): string => `${sayNumber(amount, decimalsOfMoney(settings))} ${settings.currency}`;

/** `Mild steel 3/16 in`. */
export const sayGroup = ({ material, outsideDiameter }: RackGroup): string => capital(`${material} ${sayTube(outsideDiameter)}`);

export const sayRate = (rate: number, units: Units): string => `${sayLength(metres(rate), units)} a week`;

export const sayStock = (length: number, units: Units): string => sayLength(metres(length), units);
