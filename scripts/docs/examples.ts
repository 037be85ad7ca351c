/** One example for each worksheet function, calculated on the demo workbook when the reference page is made. */
import { demoDocument } from "../../src/embedded/demo-document";
import { evaluateFormula } from "../../src/embedded/eval-formula";
import { productFunctions } from "../../src/embedded/product-functions";
import { gridLibrary } from "../grid-library";

/** Two of the demo's cars, so that an answer stays short. */
const TWO_CARS = 'Cars[#Headers], INDEX(Cars, 1, 0), Catalog!B2';

export const exampleFormulas: Readonly<Record<string, string>> = {
  CATALOG: "PLUMB.CATALOG(Nuts[#All], Adapters[#All])",
  RUNS: `PLUMB.RUNS(${TWO_CARS})`,
  PARTS: `PLUMB.PARTS(${TWO_CARS})`,
  CHECK: "PLUMB.CHECK(Cars[#Headers], Cars, Catalog!B2)",
  ASK: "PLUMB.ASK(Cars[#Headers], Cars, Catalog!B2)",
  KIT: "PLUMB.KIT(Cars[#Headers], Cars, Catalog!B2)",
  VERDICT: "PLUMB.VERDICT(Cars[#Headers], Cars, Catalog!B2)",
  TUBING: "PLUMB.TUBING(Cars[#Headers], Cars, Catalog!B2)",
  BALANCE: `PLUMB.BALANCE(${TWO_CARS})`,
  TRAVEL: `PLUMB.TRAVEL(${TWO_CARS})`,
  CURVE: `PLUMB.CURVE(${TWO_CARS}, 6)`,
  VALVEOUT: "PLUMB.VALVEOUT(800, 400, 0.5)",
  PEDAL: "PLUMB.PEDAL(100, 6, 1)",
  FLUID: `PLUMB.FLUID(${TWO_CARS})`,
  QUOTE: `PLUMB.QUOTE(${TWO_CARS})`,
  DEMAND: "PLUMB.DEMAND(Pipeline[#Headers], Pipeline, Cars[#Headers], Cars, Catalog!B2, DATE(2026,11,20), 4)",
  FORECAST: "PLUMB.FORECAST({0, 2, 0, 0, 4, 0, 0, 1, 0, 3, 0, 0}, \"SBA\")",
  REORDER: "PLUMB.REORDER(Tube[#Headers], Tube, Usage[#Headers], Usage, Catalog!B2, DATE(2026,11,20))",
  THREAD: 'PLUMB.THREAD(0.3705, 24, "in")',
  FITTING: 'PLUMB.FITTING("3/16", "1/2-20", "inverted-flare-45", Catalog!B2)',
  ADAPT: 'PLUMB.ADAPT("3/8-24", "inverted-flare-45", "M10x1", "bubble-iso", Catalog!B2)',
  IDENTIFY: "PLUMB.IDENTIFY(Seen[#Headers], Seen, Catalog!B2)",
  CUTPLAN: "PLUMB.CUTPLAN({48.5, 6; 22, 9; 71.25, 4}, {96, 9.8; 144, 14.1; 240, 22.6}, 1/16)",
  BENDS: 'PLUMB.BENDS({0, 0, 0; 100, 0, 0; 100, 100, 0; 100, 100, 100}, 20, "mm")',
  BURST: 'PLUMB.BURST("3/16", 0.028, 25000, 4)',
};

const ROWS_SHOWN = 6;

/** The first rows of an example's answer, cells parted by bars. */
export function exampleAnswer(id: string): string {
  const answer = evaluateFormula(gridLibrary, demoDocument(), productFunctions, exampleFormulas[id] ?? "");
  if ("error" in answer) throw new Error(`The example of ${id} answers ${answer.error}: ${answer.message}`);
  const shown = answer.rows.slice(0, ROWS_SHOWN).map((row) => row.join(" | ").trimEnd());
  return [...shown, ...(answer.rows.length > ROWS_SHOWN ? [`… ${answer.rows.length - ROWS_SHOWN} more rows`] : [])].join("\n");
}
