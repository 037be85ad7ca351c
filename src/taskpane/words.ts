/** The words of the panel for what the core counts and measures. */
import type { Severity } from "../core/finding";
import type { FlagGroup } from "./flags";
import type { Verdict } from "../core/report";
import { inFeet, inInches, inMillimetres, type Metres } from "../core/quantity";
import type { Settings } from "../core/settings";
import type { CarGroup } from "./car-list";
import { localeHere } from "./locale";

export type Units = Settings["units"];

/** What each severity asks of the shop. */
export const severityWords: Readonly<Record<Severity, { readonly name: string; readonly asks: string }>> = {
  stop: { name: "Stop", asks: "The quote must not go out." },
  decide: { name: "Decide", asks: "Someone has to choose." },
  watch: { name: "Watch", asks: "It works; know about it." },
  note: { name: "Note", asks: "For the record." },
};

/** What each group of cars is called; the words of the tally. */
export const groupWords: Readonly<Record<CarGroup, { readonly name: string }>> = {
  hold: { name: "On hold" }, decide: { name: "To decide" }, watch: { name: "To watch" }, sound: { name: "Sound" },
};

/** The same for the groups of the Flags view. */
export const flagWords: Readonly<Record<FlagGroup, { readonly name: string; readonly asks: string }>> = {
  ...severityWords,
  settled: { name: "Settled", asks: "Accepted or switched off; not counted." },
};

const verdictWords: Readonly<Record<Verdict, string>> = { stop: "on hold", decide: "to decide", watch: "to watch", note: "sound", sound: "sound" };

/** `24 cars: 7 on hold, 3 to decide, 4 to watch, 10 sound`; verdicts that no car has are left out. */
export function sayVerdicts(verdicts: readonly (Verdict | undefined)[]): string {
  const words = verdicts.map((verdict) => (verdict === undefined ? "not worked out" : verdictWords[verdict]));
  const order = ["on hold", "to decide", "to watch", "sound", "not worked out"];
  const counts = order.map((word) => ({ word, count: words.filter((one) => one === word).length }));
  return `${count(verdicts.length, "car")}: ${counts.filter((one) => one.count > 0).map((one) => `${sayNumber(one.count)} ${one.word}`).join(", ")}`;
}

/** `1 car`, `5,000 cars`. */
export const count = (number: number, noun: string, plural = `${noun}s`): string => `${sayNumber(number)} ${number === 1 ? noun : plural}`;

/** Whole numbers and decimals as the reader's language writes them. */
export function sayNumber(value: number, digits = 0): string {
  const format = formats.get(digits) ?? new Intl.NumberFormat(localeHere(), { minimumFractionDigits: digits, maximumFractionDigits: digits });
  formats.set(digits, format);
  return format.format(value);
}

/** Making one takes a millisecond. */
const formats = new Map<number, Intl.NumberFormat>();

/** A length of tube as it is bought: `112.4 ft` or `34.26 m`. */
export const sayLength = (length: Metres, units: Units): string => (units === "us" ? `${sayNumber(inFeet(length), 1)} ft` : `${sayNumber(length, 2)} m`);

/** A wall: `0.028 in` or `0.71 mm`. */
export const sayWall = (wall: Metres, units: Units): string => (units === "us" ? `${sayNumber(inInches(wall), 3)} in` : `${sayNumber(inMillimetres(wall), 2)} mm`);
