/** How the shop buys tube: figures that it may change, each with where its default comes from. */
import type { SettingEntryOf } from "./setting-unit";

export const SERVICE_MEASURES = ["cycle", "fill"] as const;
export const BREAK_KINDS = ["all-units", "incremental"] as const;

export const PIPELINE_USES = ["added", "left out"] as const;

export interface StockSettings {
  /** Weeks from one look at the rack to the next. */
  readonly stockReview: number;
  /** `fill`: share of demand met at once. `cycle`: share of orders that arrive before anything is short. */
  readonly serviceMeasure: (typeof SERVICE_MEASURES)[number];
  readonly serviceShare: number;
  /** Cost of holding for a year as a share of what was paid [1/year]. */
  readonly holdingRate: number;
  /** Whether a break's price holds for the whole order or for what exceeds the break. */
  readonly priceBreakKind: (typeof BREAK_KINDS)[number];
  /** Whether what open quotes need comes on top of past usage. */
  readonly pipelineUse: (typeof PIPELINE_USES)[number];
}

const PRACTICE = "common practice, no source";
const SHOP = "choice of the shop";

export const stockSettingEntries: readonly SettingEntryOf<StockSettings>[] = [
  { key: "stockReview", name: "stock review", value: 1, written: 1, unit: "weeks", range: { above: 0, below: 53, says: "above 0 and up to a year" }, meaning: "time from one look at the rack to the next", source: PRACTICE },
  { key: "serviceMeasure", name: "service measure", value: "cycle", written: "cycle", unit: "text", choices: SERVICE_MEASURES, meaning: "cycle: share of orders that arrive before anything is short; fill: share of demand met at once, which large lots reach with empty racks before each arrival", source: SHOP },
  { key: "serviceShare", name: "service", value: 0.95, written: 95, unit: "%", range: { above: 0, below: 1, says: "above 0 and below 100 %" }, meaning: "the share that the service measure is to reach", source: PRACTICE },
  { key: "holdingRate", name: "holding cost", value: 0.25, written: 25, unit: "%", range: { above: 0, below: 10, says: "above 0" }, meaning: "money, space and loss for a year, as a share of what was paid", source: PRACTICE },
  { key: "priceBreakKind", name: "price breaks", value: "all-units", written: "all-units", unit: "text", choices: BREAK_KINDS, meaning: "all-units: a break's price holds for the whole order; incremental: for what exceeds the break", source: SHOP },
  { key: "pipelineUse", name: "open quotes", value: "added", written: "added", unit: "text", choices: PIPELINE_USES, meaning: "in the Stock view; added: what they need comes on top of past usage; left out: past usage already holds the usual flow of quotes", source: SHOP },
];
