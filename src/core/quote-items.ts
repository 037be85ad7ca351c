/** What a quote sells: the set, the lines made up, the parts supplied, fluid, and labour. */
import Big from "big.js";
import { nameKey, type Catalogue } from "./catalogue";
import { fluidFor } from "./fluid";
import type { Fitting } from "./fittings";
import { tally } from "./group-by";
import { madeUpRuns } from "./kits";
import { feet, inFeet } from "./quantity";
import type { CarReport } from "./report";
import type { Run } from "./runs";
import { sayBottle, sayShare } from "./say-quantity";
import type { Settings } from "./settings";
import { sayTube } from "./tube";
import { pricePerMetre, tubeNeeded } from "./tube-stock";
import { rounded, roundingOf } from "./money";

export type QuoteSection = "set" | "made-up runs" | "tube" | "nuts" | "adapters" | "parts" | "fluid" | "labour";

export interface QuoteItem {
  readonly section: QuoteSection;
  readonly item: string;
  readonly description: string;
  readonly quantity: number;
  readonly unit: "each" | "ft" | "m" | "h";
  /** What one unit costs by the shop's tables, before markup or margin. */
  readonly cost: Big | undefined;
}

export interface QuoteItems {
  readonly items: readonly QuoteItem[];
  readonly assumed: readonly string[];
}

/** Selling price of what costs so much, by the price basis of Settings, rounded to the step; undefined for a margin that no price has. */
export function priceOfUnit(settings: Settings, cost: Big): Big | undefined {
  const { priceBasis, priceShare } = settings;
  if (priceBasis === "list") return cost;
  if (!hasPrices(settings)) return undefined;
  const factor = priceBasis === "markup" ? Big(1).plus(priceShare) : Big(1).div(Big(1).minus(priceShare));
  return rounded(cost.times(factor), roundingOf(settings));
}

/** A margin is a share of the price itself: from the whole of it on there is no such price. */
const hasPrices = ({ priceBasis, priceShare }: Settings): boolean => priceBasis !== "margin" || priceShare < 1;

/** Items in the order they print. The lines are always sold; parts only where the row's Supply names them. */
export function quoteItems(catalogue: Catalogue, report: CarReport): QuoteItems {
  const madeUp = madeUpRuns(report);
  const supplied = suppliedParts(catalogue, report);
  const labour = labourItems(catalogue, report, supplied.items);
  const items = [...setItems(report), ...madeUpItems(catalogue, madeUp), ...adapterItems(report, madeUp), ...teeItems(report), ...supplied.items, ...fluidItems(catalogue, report), ...labour.items];
  const margin = hasPrices(catalogue.settings) ? [] : [`Settings: a margin of ${sayShare(catalogue.settings.priceShare)} of the price leaves nothing for the cost, so nothing has a price`];
  return { items, assumed: [...margin, ...supplied.assumed, ...labour.assumed] };
}

const money = (price: number | undefined): Big | undefined => (price === undefined ? undefined : Big(price));

function setItems({ kit }: CarReport): QuoteItem[] {
  return (kit.chosen?.sets ?? []).map((set) => {
    const runs = kit.chosen?.covered.filter((cover) => cover.set === set).length ?? 0;
    return { section: "set", item: set.name, description: `pre-bent line set, ${runs} ${runs === 1 ? "run" : "runs"}${set.material ? `, ${set.material}` : ""}`, quantity: 1, unit: "each", cost: money(set.price) };
  });
}

function madeUpItems({ settings }: Catalogue, runs: readonly Run[]): QuoteItem[] {
  if (runs.length === 0) return [];
  const making: QuoteItem = { section: "made-up runs", item: "made-up run", description: `bending and flaring runs ${runs.map(({ number }) => number).join(", ")}`, quantity: runs.length, unit: "each", cost: Big(settings.madeUpRunCost) };
  const nuts = runs.flatMap(fittingsOf).map(({ nut }) => ({ item: nut.name, description: `${nut.face.thread.name} nut for ${sayTube(nut.tube)} tube`, price: nut.price }));
  return [making, ...tubeItems(settings, runs), ...counted("nuts", nuts)];
}

const fittingsOf = ({ a, b }: Run): Fitting[] => [a.fitting, b.fitting].filter((fitting): fitting is Fitting => fitting?.fits === true);

function tubeItems(settings: Settings, runs: readonly Run[]): QuoteItem[] {
  const us = settings.units === "us";
  return tubeNeeded(runs, settings).map(({ stock, length }): QuoteItem => {
    const perUnit = money(pricePerMetre(stock))?.times(us ? feet(1) : 1);
    const quantity = Number((us ? inFeet(length) : length).toFixed(2));
    return { section: "tube", item: stock.name, description: `${stock.material} ${sayTube(stock.outsideDiameter)}, with flares and trim`, quantity, unit: us ? "ft" : "m", cost: perUnit && rounded(perUnit, { ...roundingOf(settings), step: 0.0001 }) };
  });
}

/** Adapters of made-up runs, and those that let a set's run meet its port. */
function adapterItems({ kit }: CarReport, madeUp: readonly Run[]): QuoteItem[] {
  const steps = [...madeUp.flatMap(fittingsOf).flatMap(({ adapters }) => adapters), ...(kit.chosen?.covered.flatMap(({ adapters }) => adapters) ?? [])];
  return counted("adapters", steps.map(({ adapter: { name, a, b, price } }) => ({ item: name, description: `${a.thread.name} to ${b.thread.name}`, price })));
}

const teeItems = ({ assembly }: CarReport): QuoteItem[] =>
  counted("parts", assembly.instances.filter(({ proposed }) => proposed).map(({ component }) => ({ item: component.name, description: "tee to add", price: component.price })));

/** Parts of the car that Supply names: a component, a kind (`hose`), a column (`valves`), a kit of Kits, or `all`. */
function suppliedParts(catalogue: Catalogue, { car, assembly }: CarReport): QuoteItems {
  const wanted = (car.supply ?? []).map(nameKey);
  const kits = catalogue.kits.filter(({ kit }) => wanted.includes(nameKey(kit)));
  const fitted = assembly.instances.filter(({ proposed, unnamed }) => !proposed && !unnamed);
  const sold = fitted.filter(({ component }) => wanted.some((word) => word === "all" || word === nameKey(component.name) || isKind(word, component.kind)));
  const items = [
    ...counted("parts", sold.map(({ component }) => ({ item: component.name, description: component.description, price: component.price }))),
    ...kits.map(({ kit, component, quantity, price }): QuoteItem => ({ section: "parts", item: component, description: `of kit ${kit}`, quantity, unit: "each", cost: money(price ?? catalogue.components.get(nameKey(component))?.price) })),
  ];
  const assumed = wanted.length === 0 ? ["the quote sells the lines; every other part is on the car (Supply is blank)"] : [];
  const named = wanted.filter((word) => !SUPPLY_WORDS.has(word) && !kits.some(({ kit }) => nameKey(kit) === word) && !sold.some(({ component }) => nameKey(component.name) === word || isKind(word, component.kind)));
  return { items, assumed: [...assumed, ...named.map((word) => `Supply names "${word}", which is no part of this car and no kit`)] };
}

const SUPPLY_WORDS = new Set(["all", "lines", "fluid", "labour", "labor"]);
const VALVE_KINDS = new Set(["distribution-block", "hold-off-valve", "proportioning-valve", "adjustable-proportioning-valve", "combination-valve", "residual-valve", "tee", "union", "switch"]);

/** `hoses`, `hose`, `master`, and `valves` for all that the Valves column lists. */
const isKind = (word: string, kind: string): boolean => word === kind || word === `${kind}s` || (word === "valves" && VALVE_KINDS.has(kind)) || (word === "brakes" && (kind === "disc" || kind === "drum"));

function fluidItems(catalogue: Catalogue, report: CarReport): QuoteItem[] {
  const supply = (report.car.supply ?? []).map(nameKey);
  if (!supply.includes("fluid") && !supply.includes("all")) return [];
  const { bottles, fluid, noBottles } = fluidFor(catalogue, report);
  // What Supply names and nobody can price keeps the total open.
  if (noBottles !== undefined) return [{ section: "fluid", item: fluid ?? "brake fluid", description: noBottles, quantity: 1, unit: "each", cost: undefined }];
  return bottles.map(({ bottle, count }) => ({ section: "fluid", item: bottle.fluid, description: `bottle of ${sayBottle(catalogue.settings, bottle.bottle)}`, quantity: count, unit: "each", cost: money(bottle.price) }));
}

/** Minutes by what an operation applies to: the car, each run made up or fitted, or each part sold of a name or kind. */
function labourItems(catalogue: Catalogue, report: CarReport, sold: readonly QuoteItem[]): QuoteItems {
  const rate = catalogue.settings.labourRate;
  const assumed: string[] = [];
  const items = catalogue.operations.flatMap(({ name, appliesTo, minutes }): QuoteItem[] => {
    const times = timesApplied(catalogue, report, sold, nameKey(appliesTo ?? "car"));
    if (times === undefined) assumed.push(`operation ${name} applies to "${appliesTo}", which is nothing known`);
    if (!times) return [];
    const hours = Number(((minutes * times) / 60).toFixed(2));
    return [{ section: "labour", item: name, description: times === 1 ? `${minutes} min` : `${times} × ${minutes} min`, quantity: hours, unit: "h", cost: rate > 0 ? Big(rate) : undefined }];
  });
  return { items, assumed };
}

function timesApplied(catalogue: Catalogue, { runs, kit }: CarReport, sold: readonly QuoteItem[], to: string): number | undefined {
  if (to === "car") return 1;
  if (to === "run" || to === "line") return runs.length;
  if (to === "made-up run") return madeUpRuns({ kit, runs }).length;
  if (to === "set") return kit.chosen?.sets.length ?? 0;
  const kinds = [...catalogue.components.values()];
  if (!kinds.some(({ name, kind }) => nameKey(name) === to || kind === to)) return undefined;
  const parts = sold.filter(({ item }) => nameKey(item) === to || catalogue.components.get(nameKey(item))?.kind === to);
  return parts.reduce((total, { quantity }) => total + quantity, 0);
}

function counted(section: QuoteSection, parts: readonly { readonly item: string; readonly description: string; readonly price: number | undefined }[]): QuoteItem[] {
  return tally(parts, ({ item }) => item).map(({ one: { item, description, price }, count }) => ({ section, item, description, quantity: count, unit: "each", cost: money(price) }));
}
