/** What stands in a formula for a structured reference that leads nowhere, so that the cell says why. */
import { formulaTokens } from "../../workbook/formula-tokens";
import { type ReferenceProblem } from "../../workbook/structured-references";
import { type GridLibrary } from "./library";

/**
 * A structured reference that means nothing (yet) stands in the grid as a hidden function that answers with the reason:
 * UNRESOLVED.REFERENCE("Carz[Year]","#NAME?","No table is named Carz."). Files and later look-ups get the reference back.
 */
export const unresolved = ({ error, message }: ReferenceProblem, reference: string): string =>
  `${functionName}(${[reference, error, message].map((text) => `"${text.replaceAll('"', '""')}"`).join(",")})`;

/** The formula with every such stand-in turned back into the reference. */
export function restoreUnresolved(formula: string): string {
  if (!formula.includes(functionName)) return formula;
  const tokens = formulaTokens(formula);
  let text = "";
  for (let at = 0; at < tokens.length; at++) {
    const token = tokens[at];
    if (token?.kind !== "function" || token.text !== functionName) {
      text += token?.text ?? "";
      continue;
    }
    text += (tokens[at + 2]?.text ?? "").slice(1, -1).replaceAll('""', '"');
    while (tokens[at]?.text !== ")" && at < tokens.length) at++;
  }
  return text;
}

export function registerUnresolved(library: GridLibrary): void {
  const { arg } = library.helpers;
  library.registries.functionRegistry.replace(functionName, {
    description: "Stands for a reference to a table that cannot be found.",
    args: [arg("reference (any)", ""), arg("error (any)", ""), arg("message (any)", "")],
    hidden: true,
    compute: (_reference: unknown, error: unknown, message: unknown) => {
      const [code, reason] = [error, message].map((cell) => String((cell as { value: unknown }).value));
      return new library.EvaluationError(reason, code === "#REF!" ? "#REF" : code);
    },
  });
}

const functionName = "UNRESOLVED.REFERENCE";
