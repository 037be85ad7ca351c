/** Everything about one car, made once: the worksheet functions, the panel and the totals all read it. */
import { assemble, wheelPaths, type Assembled, type WheelPath } from "./assembly";
import type { Car } from "./car";
import type { Catalogue } from "./catalogue";
import { billOf, priceOfLines, type BillLine } from "./bill";
import { findingsOf, openQuestions } from "./checks";
import { byWorstFirst, capital, finding, SEVERITIES, type Finding, type FindingCode, type Severity } from "./finding";
import { questionKey, type Question } from "./question";
import { runsOf, type Run } from "./runs";

/** Something a car's row says that cannot be used, found while the row was read. */
export interface RowProblem {
  readonly code: Extract<FindingCode, "data-missing" | "data-out-of-range" | "data-duplicate">;
  readonly column: string;
  readonly sentence: string;
}

export type Verdict = Severity | "sound";

export interface CarReport {
  readonly car: Car;
  readonly assembly: Assembled;
  readonly paths: readonly WheelPath[];
  readonly runs: readonly Run[];
  readonly findings: readonly Finding[];
  readonly questions: readonly Question[];
  readonly assumptions: readonly string[];
  readonly bill: readonly BillLine[];
  /** Of the lines with their nuts, adapters and tees to add; undefined while something needed has no price. */
  readonly price: number | undefined;
  readonly verdict: Verdict;
}

/** Reads one car against the catalogue. Deterministic: the same row and catalogue give the same report. */
export function reportOn(catalogue: Catalogue, car: Car, rowProblems: readonly RowProblem[] = []): CarReport {
  const assembly = assemble(catalogue, car);
  const paths = wheelPaths(assembly);
  const { runs, questions: runQuestions, assumptions } = runsOf(catalogue, assembly, paths);
  const facts = { catalogue, assembly, paths, runs };
  const questions = distinct([...assembly.questions, ...runQuestions, ...askMaterial(car), ...openQuestions(facts)]);
  const rowFindings = [...rowProblems.map(asFinding), ...questions.filter(({ blocks }) => blocks).map(asMissing)];
  const findings = [...findingsOf(facts), ...rowFindings].sort(byWorstFirst);
  const bill = billOf(assembly.instances, runs, catalogue.settings);
  return {
    car, assembly, paths, runs, findings, questions, bill,
    assumptions: [...assembly.assumptions, ...assumptions], price: priceOfLines(bill, runs), verdict: verdictOf(findings),
  };
}

/** Notes do not hold a car up: with nothing above a note it is sound. */
const verdictOf = (findings: readonly Finding[]): Verdict =>
  SEVERITIES.find((severity) => severity !== "note" && findings.some((one) => one.severity === severity)) ?? "sound";

const asFinding = ({ code, column, sentence }: RowProblem): Finding => finding(code, { place: `Cars: ${column}`, seen: sentence, sentence });

const asMissing = ({ table, column, subject, ask, why }: Question): Finding =>
  finding("data-missing", { place: `${table}: ${column}${table === "Cars" ? "" : ` (${subject})`}`, seen: ask, sentence: `${ask} ${capital(why)}.`, cure: `answer in ${table}, column ${column}` });

const distinct = (questions: readonly Question[]): Question[] => [...new Map(questions.map((question) => [questionKey(question), question])).values()];

function askMaterial(car: Car): Question[] {
  if (car.material !== undefined) return [];
  return [{ table: "Cars", column: "Material", subject: car.name, ask: "Which tube material does the customer want?", why: "the tube cannot be priced or bought", blocks: true }];
}
