/** Whether a car falls under the rule that asks for two circuits and a warning lamp. */
import { lookUp } from "../catalogue";
import type { CarFacts } from "./rule";

/** By the car's own year, else by its platform's years; undefined when they leave it open. */
export function isFromRuleYear({ assembly, catalogue }: Pick<CarFacts, "assembly" | "catalogue">): boolean | undefined {
  const platform = lookUp(catalogue.platforms, assembly.car.platform);
  const ruleYear = catalogue.settings.dualCircuitRuleYear;
  const earliest = assembly.car.year ?? platform?.firstYear;
  const latest = assembly.car.year ?? platform?.lastYear;
  if (earliest !== undefined && earliest >= ruleYear) return true;
  return latest !== undefined && latest < ruleYear ? false : undefined;
}
