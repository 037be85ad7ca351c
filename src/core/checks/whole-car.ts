/** Rules about the car as a whole, and about what its row names. */
import type { Catalogue } from "../catalogue";
import { finding, type Severity } from "../finding";
import { groupBy } from "../group-by";
import { madeOnce } from "../made-once";
import type { Question } from "../question";
import { isFromRuleYear } from "./rule-year";
import { brakeKind, isDrumResidual, residualsOn, type CarFacts, type Rule } from "./rule";

export const singleCircuit: Rule = (facts) => {
  if (facts.assembly.circuits[0]?.name !== "single") return [];
  const master = facts.assembly.car.master ?? "the master";
  return [finding("single-circuit", { place: master, seen: `${master} has one outlet for all wheels`, severity: severityOfSingle(facts) })];
};

/** Stop from the rule year, decide on a conversion before it, else a note; with no year stated somebody has to say. */
function severityOfSingle(facts: CarFacts): Severity {
  const ruled = isFromRuleYear(facts);
  if (ruled) return "stop";
  return facts.assembly.car.conversion || ruled === undefined ? "decide" : "note";
}

export const unknownNames: Rule = ({ assembly, catalogue }) => [
  ...assembly.unknownParts.map(({ column, name }) => finding("unknown-part", { place: `Cars: ${column}`, seen: `${name} is not in Components${sayMeant(catalogue, name)}` })),
  ...(assembly.unknownPlatform ? [finding("unknown-platform", { place: "Cars: Platform", seen: `${assembly.car.platform} is not in Platforms` })] : []),
];

/** A name that differs in hyphens and spaces alone is worth a word. One other letter or digit is another part. */
function sayMeant({ components }: Catalogue, name: string): string {
  const meant = namesByLetters(components).get(lettersOf(name));
  return meant ? ` (${meant.join(", ")} ${meant.length === 1 ? "is" : "are"})` : "";
}

const namesByLetters = madeOnce((components: Catalogue["components"]) => groupBy([...components.values()].map(({ name }) => name).filter((name) => lettersOf(name) !== ""), lettersOf));
const lettersOf = (name: string): string => name.toLowerCase().replace(/[^\p{L}\p{N}]/gu, "");

/** One finding a part: its row in Ports has an error of its own, which the catalogue names. */
export const partsUnread: Rule = ({ assembly }) =>
  [...new Set(assembly.instances.filter(({ component }) => component.portsUnread).map(({ component }) => component.name))].map((name) =>
    finding("data-out-of-range", { place: `Ports (${name})`, seen: name, sentence: `A row of ${name} in Ports could not be read and was left out: lines to that port, open ports and outlets are not judged.`, cure: "correct that row of Ports; what is wrong in it stands above the cars and flags, and in the cell with PLUMB.CATALOG" }));

/** Drum lines without a residual are sound only with cup expanders: where WheelBrakes does not say, somebody has to look. */
export function drumQuestions(facts: CarFacts): Question[] {
  const bare = facts.paths.filter((path) => brakeKind(path.brake) === "drum" && !residualsOn(facts, path).some((one) => isDrumResidual(facts, one)));
  const silent = bare.map(({ brake }) => brake.component).filter(({ wheelBrake }) => wheelBrake?.cupExpanders === undefined);
  return [...new Set(silent)].map(({ name }) => ({
    table: "WheelBrakes", column: "Cup expanders", subject: name, blocks: false,
    ask: `Do the wheel cylinders of ${name} have cup expanders?`, why: "without them a drum line needs a residual valve, or air is drawn in",
  }));
}
