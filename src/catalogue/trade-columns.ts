/** Columns that hold the trade's own terms: threads, seats, places, materials, lists of parts. */
import { SPLITS, stated, unknown, type ListedPart, type Stated } from "../core/car";
import { WHEELS } from "../core/component";
import { GENDERS, SEATS } from "../core/joint";
import { inches, type Metres } from "../core/quantity";
import { threadNamed } from "../core/thread";
import { MATERIALS } from "../core/tube";
import { listOf, numberOf, textOf, wordKey } from "./cell";
import { blankMeans, choice, choices, column, quantity, readOnce, Refusal, type Column, type Naming, type Range } from "./column";
import { length, share, type Unit } from "./unit";

export const THREAD_ACCEPTS = "a thread such as 3/8-24, M10x1 or 1/8-27 NPT";
const DATE_HINT = `${THREAD_ACCEPTS}, in a cell formatted as text so that the spreadsheet does not make it a date`;

export const thread = (heading: string) =>
  column(heading, THREAD_ACCEPTS, (raw) => (typeof raw === "number" ? new Refusal("data-out-of-range", DATE_HINT) : (threadNamed(textOf(raw) ?? "") ?? new Refusal())));

export const seat = (heading: string) =>
  choice(heading, SEATS, {
    "inverted flare": "inverted-flare-45", "45 inverted flare": "inverted-flare-45", "iso bubble": "bubble-iso", bubble: "bubble-iso", "bubble flare": "bubble-iso",
    "37 flare": "flare-37", "45 flare": "flare-45", oring: "o-ring", "taper pipe": "pipe-taper", npt: "pipe-taper",
  });

export const gender = (heading: string) => choice(heading, GENDERS, { f: "female", m: "male", internal: "female", external: "male" });

const MATERIAL_WORDS = { steel: "mild steel", "stainless steel": "stainless", cupronickel: "copper-nickel" } as const;

/** Other ways to write a fluid. */
export const FLUID_WORDS = { "3": "DOT 3", "4": "DOT 4", "5": "DOT 5", "5.1": "DOT 5.1", dot3: "DOT 3", dot4: "DOT 4", dot5: "DOT 5", "dot5.1": "DOT 5.1" } as const;

export const material = (heading: string) => choice(heading, MATERIALS, MATERIAL_WORDS);
export const materials = (heading: string) => choices(heading, MATERIALS, MATERIAL_WORDS);

export const split = (heading: string) => choice(heading, SPLITS, { "front rear": "front/rear", "front and rear": "front/rear", "front / rear": "front/rear", x: "diagonal" });

/** Sizes of brake tube; the ends keep out a fraction that the spreadsheet made a date and a size in the wrong unit. */
const TUBE_RANGE: Range = { least: inches(1 / 16), most: inches(1), says: "from 1/16 in to 1 in (1.6 to 25.4 mm)" };
const TUBE_ACCEPTS = `a length ${TUBE_RANGE.says}`;
const FRACTION_HINT = `${TUBE_ACCEPTS}, in a cell formatted as text so that the spreadsheet does not make a date of a fraction`;
/** Days are counted from 1900; this one is in 1982. */
const LEAST_DAY = 30_000;
export const tubeSize = (heading: string, naming: Naming = {}) =>
  column(heading, TUBE_ACCEPTS, (raw, unit) => (typeof raw === "number" && raw >= LEAST_DAY ? new Refusal("data-out-of-range", FRACTION_HINT) : lengthWithin(TUBE_RANGE, raw, unit)), { ...naming, quantity: length });

const ROAD_RANGE: Range = { least: inches(1 / 16), most: inches(2000), says: "above 1/16 in and below 2000 in (1.6 mm to 50.8 m)" };
/** A length of line or of car. */
export const distance = (heading: string, naming: Naming = {}) => quantity(heading, length, ROAD_RANGE, naming);
export const DISTANCE_ACCEPTS = `a length ${ROAD_RANGE.says}`;

/** Reads one cell as a length of line, for columns that read more than the length. */
export const distanceOf = (raw: unknown, unit: Unit | undefined): Metres | Refusal => lengthWithin(ROAD_RANGE, raw, unit);

function lengthWithin(range: Range, raw: unknown, unit: Unit | undefined): Metres | Refusal {
  const value = unit === undefined ? undefined : numberOf(raw);
  const inMetres = value === undefined ? undefined : (unit as Unit<Metres>).from(value);
  return inMetres !== undefined && inMetres >= range.least && inMetres <= range.most ? inMetres : new Refusal();
}

/** A share of the car's weight. The lower end keeps out a cell formatted as %, whose 62 % is the number 0.62. */
const [LEAST_SHARE, MOST_SHARE] = [0.05, 0.95];
const SHARE_ACCEPTS = "a share from 5 % to 95 %: 62 under a heading with (%), 0.62 under one without, or the text 62%";

export const axleShare = (heading: string) =>
  column(heading, SHARE_ACCEPTS, (raw, unit) => {
    const value = shareOf(raw, unit);
    return value !== undefined && value >= LEAST_SHARE && value <= MOST_SHARE ? value : new Refusal();
  }, { quantity: share });

/** A share typed with its own per cent sign is what it says, whatever the heading. */
function shareOf(raw: unknown, unit: Unit | undefined): number | undefined {
  const percent = typeof raw === "string" && raw.trim().endsWith("%") ? numberOf(raw.trim().slice(0, -1)) : undefined;
  const value = numberOf(raw);
  return percent === undefined ? value && unit?.from(value) : percent / 100;
}

const PLACES = ["master", "valve", "frame-front", "frame-mid", "rear-hose", "axle-tee", "front", "rear", ...WHEELS];
const PLACE_KEYS: ReadonlyMap<string, string> = new Map(PLACES.map((place) => [wordKey(place), place]));

/** A place as the model names it when it is one of the standard places, else as the shop typed it. */
export const placeNamed = (typed: string): string => PLACE_KEYS.get(wordKey(typed)) ?? typed.trim();

export const place = (heading: string, naming: Naming = {}) =>
  column(heading, "a place such as master, valve, frame-front or LF", (raw) => placeNamed(textOf(raw) ?? ""), naming);

export const PARTS_ACCEPT = "components split by ; such as HV-1; PV-2@rear, or none, or ? when not known";

/** Several times what any car has; every part is joined to every other that may follow it, and a cell pasted full of names would hold up the sheet. */
const MOST_PARTS = 40;

/** Parts fitted to a car: blank or a `?` anywhere is unknown, `none` is none, `ID@where` says where. */
export const listedParts = (heading: string): Column<Stated<readonly ListedPart[]>> =>
  blankMeans(column(heading, PARTS_ACCEPT, readOnce((raw) => {
    const names = listOf(textOf(raw) ?? "");
    return names.length > MOST_PARTS ? new Refusal("data-out-of-range", `no more than ${MOST_PARTS} components`) : partsOf(names);
  })), unknown, "not known");

/** One part: blank or `?` is unknown, `none` is none. */
export const listedPart = (heading: string): Column<Stated<string>> =>
  blankMeans(column(heading, "a component, none, or ? when not known", readOnce((raw) => partOrNone(textOf(raw) ?? ""))), unknown, "not known");

/** Names of the valves that a line set was bent for: blank or `?` is undefined, `none` is an empty list. */
export const valveNames = (heading: string) =>
  column<readonly string[] | undefined>(heading, "components split by ;, or none, or ? when not known", (raw) => namesOf(listOf(textOf(raw) ?? "")));

const isNone = (typed: string): boolean => wordKey(typed) === "none";
const partOrNone = (typed: string): Stated<string> => (typed === "?" ? unknown : stated(isNone(typed) ? "none" : typed));

function namesOf(names: readonly string[]): readonly string[] | undefined {
  if (names.some((one) => one.includes("?"))) return undefined;
  return names.length === 1 && names.every(isNone) ? [] : names;
}

function partsOf(parts: readonly string[]): Stated<readonly ListedPart[]> | Refusal {
  if (parts.some((part) => part.includes("?"))) return unknown;
  if (parts.length === 1 && isNone(parts[0] ?? "")) return stated([]);
  const read = parts.map(partOf);
  return read.every((part) => part !== undefined) && !parts.some(isNone) ? stated(read) : new Refusal();
}

function partOf(typed: string): ListedPart | undefined {
  const [component = "", at, ...more] = typed.split("@").map((piece) => piece.trim());
  if (component === "" || at === "" || more.length > 0) return undefined;
  return at === undefined ? { component } : { component, at: placeNamed(at) };
}
