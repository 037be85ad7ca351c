/** Pipeline and Usage: the quotes still open, and the tube used so far. Given to the functions about stock, not to the catalogue. */
import { inches } from "../../core/quantity";
import type { OpenQuote, TubeUsed } from "../../core/stock-history";
import { column, figure, filled, name, quantity, Refusal, type Range } from "../column";
import { day } from "../day";
import { numberOf } from "../cell";
import { table } from "../table-spec";
import { length, share } from "../unit";

const CHANCE_ACCEPTS = "a chance from 0 to 100 %: 60 under a heading with (%), 0.6 under one without, or the text 60%";

/** A zero that is meant is the text 0 or 0%, as an empty cell reads as 0. */
const chance = column("Chance", CHANCE_ACCEPTS, (raw, unit) => {
  const percent = typeof raw === "string" && raw.trim().endsWith("%") ? numberOf(raw.trim().slice(0, -1)) : undefined;
  const number = numberOf(raw);
  const value = percent !== undefined ? percent / 100 : number === undefined ? undefined : unit?.from(number);
  return value !== undefined && value >= 0 && value <= 1 ? value : new Refusal();
}, { quantity: share });

export const pipelineTable = table({
  name: "Pipeline",
  holds: "one quote that is still open",
  columns: {
    quote: name("Quote"),
    car: name("Car", "a car of the Cars table"),
    chance: filled(chance),
    earliest: day("Earliest"),
    likely: day("Likely"),
    latest: day("Latest"),
    quantity: figure("Quantity"),
  },
  knownBy: [["quote"], ["car"], ["chance"], ["earliest", "likely", "latest"]],
  toCore: (row, refuse): OpenQuote => {
    if (isBefore(row.likely, row.earliest)) refuse("likely", "a date not before Earliest");
    if (isBefore(row.latest, row.likely ?? row.earliest)) refuse("latest", "a date not before Earliest and Likely");
    return row;
  },
});

const isBefore = (day: number | undefined, other: number | undefined): boolean => day !== undefined && other !== undefined && day < other;

/** A row may hold a week of a busy shop, so more than a line or a car is long. */
const USED: Range = { least: inches(1 / 16), most: inches(24_000), says: "above 1/16 in and up to 2000 ft (1.6 mm to 609.6 m)" };

export const usageTable = table({
  name: "Usage",
  holds: "one length of tube used on one day",
  columns: {
    date: filled(day("Date")),
    tube: name("Tube", "a tube of the Tube table"),
    length: filled(quantity("Length", length, USED)),
  },
  knownBy: [["date"], ["tube"], ["length"]],
  toCore: (row): TubeUsed => row,
});
