/** Every entry of published-values.ts, each with its source beside it. A new entry without a case here fails. */
import { gammaQuantile, negativeBinomialQuantile, normalQuantile, poissonQuantile } from "../../../src/core/stock/distributions";
import { continuousReviewCost, squareRootPolicy } from "../../../src/core/stock/continuous-review";
import { economicOrderQuantity, economicOrderWithBackorders, planLots } from "../../../src/core/stock/economic-order";
import { compoundPoisson, cumulated } from "../../../src/core/stock/lattice";
import { normalLoss, poissonLoss, standardNormalLoss } from "../../../src/core/stock/loss";
import { newsvendorCost, normalNewsvendor } from "../../../src/core/stock/newsvendor";
import { bestLot, type BreakKind } from "../../../src/core/stock/price-breaks";
import { smooth, type SmoothingMethod } from "../../../src/core/stock/smoothing";
import { entries } from "./published-values";

type Inputs = Readonly<Record<string, number>> & { readonly y?: number[]; readonly demand?: number[]; readonly breaks?: number[]; readonly c?: number[]; readonly args?: number[][] };

const at = (inputs: Inputs, name: string): number => {
  const value = inputs[name];
  if (value === undefined) throw new Error(`the entry has no ${name}`);
  return value;
};

/** In the order in which the function's answer lists them, which is the order of the file. */
const valuesOf = (result: object): readonly unknown[] => Object.values(result);

const lotCosts = (inputs: Inputs) => ({ orderCost: at(inputs, "K"), holdingCost: at(inputs, "h") });
const overAndUnder = (inputs: Inputs) => ({ holding: at(inputs, "h"), shortage: at(inputs, "p") });
const normal = (inputs: Inputs) => ({ mean: at(inputs, "mean"), deviation: at(inputs, "sd") });
const steady = (inputs: Inputs) => ({ rate: at(inputs, "D"), deviation: at(inputs, "sd"), leadTime: at(inputs, "L") });
const costs = (inputs: Inputs) => ({ ...lotCosts(inputs), shortageCost: at(inputs, "p") });

const lot = (kind: BreakKind) => (inputs: Inputs) => {
  const bands = (inputs.breaks ?? []).map((from, band) => ({ from, price: inputs.c?.[band] ?? NaN }));
  const best = bestLot({ kind, bands, orderCost: at(inputs, "K") }, { holdingRate: at(inputs, "i"), demand: at(inputs, "D") });
  return [best?.quantity, best?.band, best?.cost];
};

const smoothed = (method: SmoothingMethod) => (inputs: Inputs) =>
  smooth(method, inputs.y ?? [], { alpha: at(inputs, "alpha"), beta: inputs["beta"] ?? at(inputs, "alpha") });

const croston = (inputs: Inputs) => {
  const { level, interval, rate } = smoothed("Croston")(inputs);
  return [level, interval, rate];
};

const economic = (inputs: Inputs) => {
  const { quantity, cost } = economicOrderQuantity(lotCosts(inputs), at(inputs, "D"));
  return [quantity, cost];
};

/** Sizes of logarithmic distribution, θ = 1 − p, make the total negative binomial; λ = −r ln p, as the entry says. */
const panjer = (inputs: Inputs) => {
  const theta = 1 - at(inputs, "p");
  const sizes = new Float64Array(at(inputs, "x") + 1).map((_, k) => (k === 0 ? 0 : -(theta ** k) / k / Math.log(1 - theta)));
  return cumulated(compoundPoisson(-at(inputs, "r") * Math.log(at(inputs, "p")), sizes, at(inputs, "x") + 1)).at(-1);
};

const ways: Readonly<Record<string, (inputs: Inputs) => unknown>> = {
  "eoq-ex3.1": economic,
  "eoq-pr3.1": economic,
  "eoq-au-ex3.6": lot("all-units"),
  "eoq-au-doc": lot("all-units"),
  "eoq-inc-ex3.7": lot("incremental"),
  "eoq-back-ex3.8": (inputs) => valuesOf(economicOrderWithBackorders(lotCosts(inputs), at(inputs, "p"), at(inputs, "D"))),
  "ww-ex3.9": (inputs) => planLots(lotCosts(inputs), inputs.demand ?? []).cost,
  "nv-ex4.3": (inputs) => valuesOf(normalNewsvendor(overAndUnder(inputs), normal(inputs))),
  "nv-cost-ex4.3": (inputs) => newsvendorCost(overAndUnder(inputs), normalLoss(at(inputs, "S"), normal(inputs))),
  "nv-pois-ex4.7": (inputs) => newsvendorCost(overAndUnder(inputs), poissonLoss(at(inputs, "S"), at(inputs, "lambda"))),
  "loss-z1.3": (inputs) => [standardNormalLoss(at(inputs, "z")).short, standardNormalLoss(at(inputs, "z")).left],
  "loss-z3.1": (inputs) => standardNormalLoss(at(inputs, "z")).short,
  "loss-n": (inputs) => valuesOf(normalLoss(at(inputs, "x"), normal(inputs))),
  "loss-pois": (inputs) => valuesOf(poissonLoss(at(inputs, "x"), at(inputs, "lambda"))),
  "rq-ex5.1": (inputs) => continuousReviewCost(costs(inputs), steady(inputs), { reorderPoint: at(inputs, "r"), quantity: at(inputs, "Q") }),
  "rq-eoqss-ex5.5": (inputs) => valuesOf(squareRootPolicy(costs(inputs), steady(inputs))),
  "croston-productC-a0.1": croston,
  "croston-productC-a0.3": croston,
  "sba-factor": (inputs) => smoothed("SBA")(inputs).rate,
  "sbj-factor": (inputs) => smoothed("SBJ")(inputs).rate,
  "ses-zero-init": (inputs) => smooth("SES", inputs.y ?? [], { alpha: at(inputs, "alpha"), beta: 0 }, { level: at(inputs, "l0") }).rate,
  "qnorm-0.8": (inputs) => normalQuantile(at(inputs, "p"), { mean: 0, deviation: 1 }),
  "qnorm-0.95": (inputs) => normalQuantile(at(inputs, "p"), { mean: 0, deviation: 1 }),
  "qnorm-0.99": (inputs) => normalQuantile(at(inputs, "p"), { mean: 0, deviation: 1 }),
  "qnorm-0.000001": (inputs) => normalQuantile(at(inputs, "p"), { mean: 0, deviation: 1 }),
  "qgamma-0.95-0.5": (inputs) => gammaQuantile(at(inputs, "p"), { shape: at(inputs, "shape"), scale: at(inputs, "scale") }),
  "qgamma-0.9-2.3": (inputs) => gammaQuantile(at(inputs, "p"), { shape: at(inputs, "shape"), scale: at(inputs, "scale") }),
  "qgamma-0.999-0.2": (inputs) => gammaQuantile(at(inputs, "p"), { shape: at(inputs, "shape"), scale: at(inputs, "scale") }),
  qpois: ({ args }) => args?.map(([share = NaN, mean = NaN]) => poissonQuantile(share, mean)),
  qnbinom: ({ args }) => args?.map(([share = NaN, size = NaN, chance = NaN]) => negativeBinomialQuantile(share, { size, chance })),
  "panjer-nb-2.5": panjer,
  "tsb-0.1-0.1": (inputs) => smooth("TSB", inputs.y ?? [], { alpha: at(inputs, "alpha"), beta: at(inputs, "beta") }, { size: at(inputs, "z0"), chance: at(inputs, "p0") }).rate,
};

test("every entry has a way to be worked out, and every way an entry", () => expect(entries.map(({ id }) => id).sort()).toEqual(Object.keys(ways).sort()));

test.each(entries.map((entry) => [entry.id, entry.source.title, entry] as const))("%s, from %s", (id, _title, { inputs, expected, tolerance }) => {
  const got = [ways[id]?.(inputs)].flat();
  const wanted = [expected].flat();
  expect(got).toHaveLength(wanted.length);
  // The file passes 475230.20737322664 for 475230.2073732266 at 1e-12, so above 1 its tolerances are relative.
  wanted.forEach((value, index) => expect(Math.abs((got[index] as number) - value)).toBeLessThanOrEqual(tolerance * Math.max(1, Math.abs(value))));
});
