/** The answers of the examples, calculated on the demo workbook when the reference page is made. */
import { demoDocument } from "../../src/embedded/demo-document";
import { formulaEvaluator, type FormulaAnswer } from "../../src/embedded/eval-formula";
import { productFunctions } from "../../src/embedded/product-functions";
import { exampleFormulas } from "../../src/functions/examples";
import { gridLibrary } from "../grid-library";

const ROWS_SHOWN = 6;

/** One workbook for all examples: to open it calculates every sheet of the demo. */
let evaluate: ((formula: string) => FormulaAnswer) | undefined;

/** The first rows of an example's answer, cells parted by bars. */
export function exampleAnswer(id: string): string {
  evaluate ??= formulaEvaluator(gridLibrary, demoDocument(), productFunctions);
  const answer = evaluate(exampleFormulas[id] ?? "");
  if ("error" in answer) throw new Error(`The example of ${id} answers ${answer.error}: ${answer.message}`);
  const shown = answer.rows.slice(0, ROWS_SHOWN).map((row) => row.join(" | ").trimEnd());
  return [...shown, ...(answer.rows.length > ROWS_SHOWN ? [`… ${answer.rows.length - ROWS_SHOWN} more rows`] : [])].join("\n");
}
