/** One example for each worksheet function, on the demo workbook: for the reference page and for the panel. */

/** One of the demo's cars, so that an answer stays short. */
const ONE_CAR = 'Cars[#Headers], INDEX(Cars, 1, 0), Catalog!B2';

export const exampleFormulas: Readonly<Record<string, string>> = {
  CATALOG: "PLUMB.CATALOG(Nuts[#All], Adapters[#All])",
  RUNS: `PLUMB.RUNS(${ONE_CAR})`,
  PARTS: `PLUMB.PARTS(${ONE_CAR})`,
  CHECK: "PLUMB.CHECK(Cars[#Headers], Cars, Catalog!B2)",
  ASK: "PLUMB.ASK(Cars[#Headers], Cars, Catalog!B2)",
  KIT: "PLUMB.KIT(Cars[#Headers], Cars, Catalog!B2)",
  VERDICT: "PLUMB.VERDICT(Cars[#Headers], Cars, Catalog!B2)",
  BALANCE: `PLUMB.BALANCE(${ONE_CAR})`,
  TRAVEL: `PLUMB.TRAVEL(${ONE_CAR})`,
  CURVE: `PLUMB.CURVE(${ONE_CAR}, 6)`,
  VALVEOUT: "PLUMB.VALVEOUT(800, 400, 0.5)",
  PEDAL: "PLUMB.PEDAL(100, 6, 1)",
  FLUID: `PLUMB.FLUID(${ONE_CAR})`,
  QUOTE: `PLUMB.QUOTE(${ONE_CAR})`,
  DEMAND: "PLUMB.DEMAND(Pipeline[#Headers], Pipeline, Cars[#Headers], Cars, Catalog!B2, DATE(2026,11,20), 4)",
  FORECAST: "PLUMB.FORECAST({0, 2, 0, 0, 4, 0, 0, 1, 0, 3, 0, 0}, \"SBA\")",
  REORDER: "PLUMB.REORDER(Tube[#Headers], Tube, Usage[#Headers], Usage, Catalog!B2, DATE(2026,11,20))",
  THREAD: 'PLUMB.THREAD(0.3705, 24, "in")',
  FITTING: 'PLUMB.FITTING("3/16", "1/2-20", "inverted-flare-45", Catalog!B2)',
  ADAPT: 'PLUMB.ADAPT("3/8-24", "inverted-flare-45", "M10x1", "bubble-iso", Catalog!B2)',
  IDENTIFY: "PLUMB.IDENTIFY(Seen[#Headers], Seen, Catalog!B2)",
  TUBING: "PLUMB.TUBING(Cars[#Headers], Cars, Catalog!B2)",
  CUTPLAN: "PLUMB.CUTPLAN({48.5, 6; 22, 9; 71.25, 4}, {96, 9.8; 144, 14.1; 240, 22.6}, 1/16)",
  BENDS: 'PLUMB.BENDS({0, 0, 0; 100, 0, 0; 100, 100, 0; 100, 100, 100}, 20, "mm")',
  BURST: 'PLUMB.BURST("3/16", 0.028, 25000, 4)',
};
