/** The bill of one car: the parts listed on it, and what its lines need besides. */
import Big from "big.js";
import type { Instance } from "./assembly";
import { fittingOut, type FittingOut } from "./fitting-out";
import { sumPrices, type Fitting } from "./fittings";
import { groupBy, tally } from "./group-by";
import { madeOnceByKey } from "./made-once";
import { metres, type Metres } from "./quantity";
import type { Run } from "./runs";
import type { Settings } from "./settings";
import { sayTube } from "./tube";
import { pricePerMetre, tubeNeeded } from "./tube-stock";

export interface BillLine {
  readonly part: string;
  readonly kind: string;
  readonly description: string;
  /** A count, or for tube a length. */
  readonly quantity: { readonly count: number } | { readonly length: Metres };
  /** Price of one, or of one metre. */
  readonly price: number | undefined;
  readonly amount: number | undefined;
  /** Stands on the car's row, is needed to make its lines, or to fit them to the car (not in their price). */
  readonly from: "listed" | "needed" | "to fit";
}

/** Lists the car's parts in the order fluid meets them, then tees to add, nuts, adapters and tube. */
export function billOf(instances: readonly Instance[], runs: readonly Run[], settings: Settings): BillLine[] {
  const fitted = instances.filter(({ proposed, unnamed }) => !proposed && !unnamed);
  const fittings = runs.flatMap(({ a, b }) => [a.fitting, b.fitting]).filter((fitting): fitting is Fitting => fitting?.fits === true);
  return [
    ...counted(fitted.map(({ component }) => ({ part: component.name, kind: component.kind, description: component.description, price: component.price })), "listed"),
    ...counted(instances.filter(({ proposed }) => proposed).map(({ component }) => ({ part: component.name, kind: "tee to add", description: component.description, price: component.price })), "needed"),
    ...counted(fittings.map(({ nut, flare }) => ({ part: nut.name, kind: "nut", description: `${nut.face.thread.name} for ${sayTube(nut.tube)} tube, ${flare} flare`, price: nut.price })), "needed"),
    ...counted(fittings.flatMap(({ adapters }) => adapters.map(({ adapter: { name, a, b, price } }) => ({ part: name, kind: "adapter", description: `${a.thread.name} to ${b.thread.name}`, price }))), "needed"),
    ...tubeLines(runs, settings),
    ...fittingOut(runs, settings).flatMap(fittingLines),
  ];
}

function fittingLines({ tube, clips, armour }: FittingOut): BillLine[] {
  const line = { price: undefined, amount: undefined, from: "to fit" } as const;
  return [
    ...(clips > 0 ? [{ ...line, part: `clip ${sayTube(tube)}`, kind: "clip", description: "by the setting clip spacing", quantity: { count: clips } }] : []),
    ...(armour > 0 ? [{ ...line, part: `armour ${sayTube(tube)}`, kind: "armour", description: "over the lines at armoured places", quantity: { length: armour } }] : []),
  ];
}

/** Sum of what the lines need; undefined while a needed part has no price or a run no length. */
export const priceOfLines = (lines: readonly BillLine[], runs: readonly Run[]): number | undefined =>
  runs.length === 0 || runs.some(({ stock, length }) => !stock || length === undefined) ? undefined : sumPrices(lines.filter(({ from }) => from === "needed").map(({ amount }) => amount));

export type PartTotal = Pick<BillLine, "part" | "kind" | "quantity">;

/** Nuts, adapters, tees, clips and armour over the bills of many cars, by kind in that order and by name. */
export function totalParts(lines: readonly BillLine[]): PartTotal[] {
  const counted = lines.filter(({ kind }) => KINDS.includes(kind));
  const totals = [...groupBy(counted, ({ kind, part }) => `${kind}|${part}`).values()].map((same): PartTotal => {
    const [{ part, kind, quantity }] = same as [BillLine];
    const sum = same.reduce((total, one) => total + ("count" in one.quantity ? one.quantity.count : one.quantity.length), 0);
    return { part, kind, quantity: "count" in quantity ? { count: sum } : { length: metres(sum) } };
  });
  return totals.sort((a, b) => KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind) || (a.part < b.part ? -1 : 1));
}

const KINDS: readonly string[] = ["nut", "adapter", "tee", "tee to add", "clip", "armour"];

interface Item {
  readonly part: string;
  readonly kind: string;
  readonly description: string;
  readonly price: number | undefined;
}

function counted(items: readonly Item[], from: BillLine["from"]): BillLine[] {
  return tally(items, ({ part }) => part).map(({ one: { part, kind, description, price }, count }) => ({ part, kind, description, quantity: { count }, price, amount: times(price, count), from }));
}

function tubeLines(runs: readonly Run[], settings: Settings): BillLine[] {
  return tubeNeeded(runs, settings).map(({ stock, length }) => {
    const price = pricePerMetre(stock);
    const description = `${stock.material} ${sayTube(stock.outsideDiameter)}, cut length with allowances`;
    return { part: stock.name, kind: "tube", description, quantity: { length }, price, amount: times(price, length), from: "needed" };
  });
}

/** To the cent; halves go away from zero. */
const times = (price: number | undefined, quantity: number): number | undefined => (price === undefined ? undefined : amounts(`${price}|${quantity}`, () => timesExactly(price, quantity)));

/** Exact decimals take their time, and a shop's few hundred prices come in small counts. */
const amounts = madeOnceByKey<number>(5000);
const timesExactly = (price: number, quantity: number): number => Big(price).times(quantity).round(2, Big.roundHalfUp).toNumber();
