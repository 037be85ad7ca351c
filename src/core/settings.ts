/** Every number that a shop or a rule may change, with its default, its unit and where the default comes from. */
import { physicsSettingEntries, type PhysicsSettings } from "./physics-settings";
import { inches, millimetres, psi, type Metres, type Pascals } from "./quantity";
import type { SettingEntryOf } from "./setting-unit";
import { stockSettingEntries, type StockSettings } from "./stock-settings";

export type { SettingUnit } from "./setting-unit";

export interface Settings extends PhysicsSettings, StockSettings {
  readonly units: "us" | "metric";
  readonly currency: string;
  /** At the head of what is sent; blank leaves room for the shop's own paper. */
  readonly shopName: string;
  readonly shopAddress: string;
  /** Added to an adapter chain's price for each adapter: every joint is a leak path and takes time. */
  readonly jointCost: number;
  /** Longest adapter chain on one end that raises nothing. */
  readonly mostAdapters: number;
  /** Added to the parts of a run that is made up from straight tube. */
  readonly madeUpRunCost: number;
  readonly flareAllowance: Metres;
  readonly trimAllowance: Metres;
  readonly sawKerf: Metres;
  /** Of the shop's bending die, to the centre line; 0 takes the least radius of each tube. */
  readonly bendRadius: Metres;
  /** Shortest straight that the bender can hold. */
  readonly benderGrip: Metres;
  /** Most length of line without a clip; 0 counts none. */
  readonly clipSpacing: Metres;
  /** Places split by `;`: lines that begin or end there are armoured from end to end. */
  readonly armouredPlaces: string;
  /** Length of a line between two parts at one place, where that was not measured. */
  readonly samePlaceLine: Metres;
  /** Least ratio of the pressure at which a tube yields to that of the hardest stop. */
  readonly burstSafetyFactor: number;
  /** How a cost becomes a price: as listed, cost plus a share of cost, or cost as what is left of the price after a share of it. */
  readonly priceBasis: "list" | "markup" | "margin";
  readonly priceShare: number;
  readonly discountShare: number;
  readonly taxShare: number;
  readonly depositShare: number;
  readonly freight: number;
  /** For an hour. */
  readonly labourRate: number;
  readonly roundingStep: number;
  readonly roundingHalves: "up" | "even";
  readonly quoteValidDays: number;
  /** Fluid run through while flushing and bleeding, as a multiple of the fill. */
  readonly flushFactor: number;
  readonly discResidualLimit: Pascals;
  /** How the shop bleeds: a hold-off valve shuts the front line to a pressure bleeder. */
  readonly bleeding: "pressure" | "pedal";
  readonly dualCircuitRuleYear: number;
  readonly nearMissDiameter: Metres;
  readonly nearMissPitchShare: number;
  /** Standard deviation of a caliper reading of a thread, damage and plating included. */
  readonly diameterSpread: Metres;
  /** Standard deviation of a pitch reading, as a share of the pitch. */
  readonly pitchSpread: number;
  /** Chance that a port of a body is not told of. */
  readonly portOverlooked: number;
  /** Chance that a reading is of something else, or of a part that was changed. */
  readonly readingMistaken: number;
  /** Chance that what is told of place, side, gender or wire is wrong. */
  readonly remarkMistaken: number;
  /** Chance that a body seen is not in Components. */
  readonly bodyNotListed: number;
  /** Rules that the shop has turned off or given another severity, by finding code. */
  readonly rules: ReadonlyMap<string, RuleSwitch>;
}

/** What a shop may make of a rule. A stop is never switched, only accepted for one car. */
export const RULE_SWITCHES = ["off", "note", "watch", "decide"] as const;
export type RuleSwitch = (typeof RULE_SWITCHES)[number];

export type SettingEntry = SettingEntryOf<Settings, Exclude<keyof Settings, "rules">>;

const PRACTICE = "common practice, no source";

export const settingEntries: readonly SettingEntry[] = [
  { key: "units", name: "units", value: "us", written: "us", unit: "text", choices: ["us", "metric"], meaning: "units of every answer: us is inches, feet, pounds and psi, metric is millimetres, metres, kilograms and bar", source: "choice of the shop" },
  { key: "currency", name: "currency", value: "USD", written: "USD", unit: "text", meaning: "currency of every price", source: "choice of the shop" },
  { key: "shopName", name: "shop name", value: "", written: "", unit: "text", meaning: "at the head of quote and cut list sheets; blank for paper that bears it", source: "choice of the shop" },
  { key: "shopAddress", name: "shop address", value: "", written: "", unit: "text", meaning: "under the shop name: address, telephone", source: "choice of the shop" },
  { key: "jointCost", name: "joint cost", value: 6, written: 6, unit: "money", meaning: "added for each adapter when chains are compared", source: PRACTICE },
  { key: "mostAdapters", name: "most adapters on one end", value: 2, written: 2, unit: "count", meaning: "a longer chain is flagged joint-count", source: PRACTICE },
  { key: "madeUpRunCost", name: "made-up run cost", value: 30, written: 30, unit: "money", meaning: "bending and flaring one run from straight tube", source: PRACTICE },
  { key: "flareAllowance", name: "flare allowance", value: inches(0.25), written: 0.25, unit: "in", meaning: "tube used up by forming one flare", source: PRACTICE },
  { key: "trimAllowance", name: "trim allowance", value: inches(0.5), written: 0.5, unit: "in", meaning: "tube trimmed at each end when fitting", source: PRACTICE },
  { key: "sawKerf", name: "saw kerf", value: inches(0.0625), written: 0.0625, unit: "in", meaning: "tube lost to each cut", source: PRACTICE },
  { key: "bendRadius", name: "bend radius", value: inches(0), written: "0", unit: "in", meaning: "radius of the shop's bending die, to the centre line; 0 takes the least bend radius of each tube", source: "choice of the shop" },
  { key: "benderGrip", name: "bender grip", value: inches(0.5), written: 0.5, unit: "in", meaning: "shortest straight that the bender can hold", source: PRACTICE },
  { key: "clipSpacing", name: "clip spacing", value: inches(18), written: 18, unit: "in", meaning: "most length of line between an end or a clip and the next; 0 counts no clips", source: PRACTICE },
  { key: "armouredPlaces", name: "armoured places", value: "none", written: "none", unit: "text", meaning: "places split by ; such as rear-hose; axle-tee: lines that begin or end there are armoured from end to end", source: "choice of the shop" },
  { key: "burstSafetyFactor", name: "burst safety factor", value: 3, written: 3, unit: "count", meaning: "least ratio of the pressure at which a tube yields to that of the hardest stop", source: PRACTICE },
  { key: "samePlaceLine", name: "same-place line", value: inches(12), written: 12, unit: "in", meaning: "length of a line between two parts at one place, where it was not measured", source: PRACTICE },
  { key: "priceBasis", name: "price basis", value: "list", written: "list", unit: "text", choices: ["list", "markup", "margin"], meaning: "list: prices of the tables are selling prices; markup: a share is added to cost; margin: the share is of the price", source: "choice of the shop" },
  { key: "priceShare", name: "markup or margin", value: 0, written: 0, unit: "%", meaning: "the share that the price basis adds", source: "choice of the shop" },
  { key: "discountShare", name: "discount", value: 0, written: 0, unit: "%", meaning: "taken off the sum of the lines", source: "choice of the shop" },
  { key: "taxShare", name: "tax", value: 0, written: 0, unit: "%", meaning: "on lines less discount, freight included", source: "local law; none shipped" },
  { key: "depositShare", name: "deposit", value: 0.5, written: 50, unit: "%", meaning: "asked with the order, of the total", source: PRACTICE },
  { key: "freight", name: "freight", value: 0, written: 0, unit: "money", meaning: "added to every quote", source: "choice of the shop" },
  { key: "labourRate", name: "labour rate", value: 0, written: 0, unit: "money", meaning: "for an hour; 0 leaves labour without a price", source: "choice of the shop" },
  { key: "roundingStep", name: "rounding step", value: 0.01, written: 0.01, unit: "money", meaning: "smallest step of a price", source: "choice of the shop" },
  { key: "roundingHalves", name: "rounding of halves", value: "up", written: "up", unit: "text", choices: ["up", "even"], meaning: "halves of a step go up, or to the even step", source: "choice of the shop" },
  { key: "quoteValidDays", name: "quote valid", value: 30, written: 30, unit: "count", meaning: "days that a quote stands", source: PRACTICE },
  { key: "flushFactor", name: "flush factor", value: 2, written: 2, unit: "count", meaning: "fluid used, as a multiple of what the system holds", source: PRACTICE },
  { key: "discResidualLimit", name: "disc residual limit", value: psi(5), written: 5, unit: "psi", meaning: "a residual above this is a drum residual", source: PRACTICE },
  { key: "bleeding", name: "bleeding", value: "pressure", written: "pressure", unit: "text", choices: ["pressure", "pedal"], meaning: "how the shop bleeds brakes", source: "choice of the shop" },
  { key: "dualCircuitRuleYear", name: "dual circuit rule year", value: 1968, written: 1968, unit: "year", meaning: "first year that needs two circuits", source: "49 CFR 571.105, passenger cars (from memory)" },
  { key: "nearMissDiameter", name: "near-miss diameter", value: millimetres(0.5), written: 0.5, unit: "mm", meaning: "threads nearer than this in diameter may start in one another", source: PRACTICE },
  { key: "nearMissPitchShare", name: "near-miss pitch", value: 0.25, written: 25, unit: "%", meaning: "and nearer than this in pitch", source: PRACTICE },
  { key: "diameterSpread", name: "diameter reading spread", value: millimetres(0.05), written: 0.05, unit: "mm", meaning: "how far a caliper reading of a thread is usually off (one standard deviation)", source: PRACTICE },
  { key: "pitchSpread", name: "pitch reading spread", value: 0.02, written: 2, unit: "%", meaning: "how far a pitch reading is usually off (one standard deviation)", source: PRACTICE },
  { key: "portOverlooked", name: "port overlooked", value: 0.25, written: 25, unit: "%", meaning: "chance that a port of a body is not told of", source: PRACTICE },
  { key: "readingMistaken", name: "reading mistaken", value: 0.01, written: 1, unit: "%", meaning: "chance that a port told of is none of the body's, or its reading false", source: PRACTICE },
  { key: "remarkMistaken", name: "remark mistaken", value: 0.05, written: 5, unit: "%", meaning: "chance that what is told of place, side, gender or wire is wrong", source: PRACTICE },
  { key: "bodyNotListed", name: "body not listed", value: 0.05, written: 5, unit: "%", meaning: "chance that a body seen is not in Components", source: PRACTICE },
  ...(physicsSettingEntries as readonly SettingEntry[]),
  ...(stockSettingEntries as readonly SettingEntry[]),
];

export const defaultSettings: Settings = {
  ...(Object.fromEntries(settingEntries.map(({ key, value }) => [key, value])) as unknown as Omit<Settings, "rules">),
  rules: new Map(),
};
