/** The settings by what they are about, in the order in which a shop comes to need them. */
import { findingCodes, findingEntries, type FindingCode } from "../../core/finding";
import { settingEntries, type SettingEntry, type Settings } from "../../core/settings";

export interface SettingGroup {
  readonly name: string;
  readonly entries: readonly SettingEntry[];
}

type Key = Exclude<keyof Settings, "rules">;

const GROUPS: readonly { readonly name: string; readonly holds: (key: Key) => boolean }[] = [
  { name: "The shop", holds: among("units", "currency", "shopName", "shopAddress") },
  { name: "Prices and quotes", holds: among("priceBasis", "priceShare", "discountShare", "taxShare", "depositShare", "freight", "labourRate", "roundingStep", "roundingHalves", "quoteValidDays", "jointCost", "madeUpRunCost") },
  { name: "Tube and bench", holds: among("flareAllowance", "trimAllowance", "sawKerf", "bendRadius", "benderGrip", "clipSpacing", "armouredPlaces", "samePlaceLine", "mostAdapters", "burstSafetyFactor") },
  { name: "Stock", holds: among("stockReview", "serviceMeasure", "serviceShare", "holdingRate", "priceBreakKind", "pipelineUse") },
  { name: "Circuits and bleeding", holds: among("flushFactor", "discResidualLimit", "bleeding", "dualCircuitRuleYear") },
  { name: "Threads and parts as measured", holds: among("nearMissDiameter", "nearMissPitchShare", "diameterSpread", "pitchSpread", "portOverlooked", "readingMistaken", "remarkMistaken", "bodyNotListed") },
  { name: "Figures of the stopping rules", holds: (key) => /^(fmvss105|fmvss135|r13h)/.test(key) },
  { name: "Balance, pedal and stopping", holds: () => true },
];

/** Every setting once, in the first group that holds it. */
export const settingGroups: readonly SettingGroup[] = GROUPS.map(({ name, holds }, index) => ({
  name, entries: settingEntries.filter(({ key }) => holds(key) && !GROUPS.slice(0, index).some((earlier) => earlier.holds(key))),
}));

/** Rules that a shop may switch, worst first; a stop is none of them. */
export const switchableRules: readonly FindingCode[] = ["decide", "watch", "note"].flatMap((severity) => findingCodes.filter((code) => findingEntries[code].severity === severity));

export const stopRules: readonly FindingCode[] = findingCodes.filter((code) => findingEntries[code].severity === "stop");

function among(...keys: readonly Key[]): (key: Key) => boolean {
  return (key) => keys.includes(key);
}
