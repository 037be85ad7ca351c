/** Everything about one car, made once: the worksheet functions, the panel and the totals all read it. */
import { rankQuestions, type RankedQuestion } from "./ask";
import type { Assembled, WheelPath } from "./assembly";
import type { Car } from "./car";
import type { Catalogue } from "./catalogue";
import { priceOfLines, type BillLine } from "./bill";
import { findingsOf, openQuestions } from "./checks";
import { equippedAs, inNameOf, namesCar, type Equipped } from "./equipment";
import { byWorstFirst, capital, finding, findingCodes, SEVERITIES, type Finding, type FindingCode, type Severity } from "./finding";
import type { KitChoice } from "./kits";
import { madeOnce } from "./made-once";
import { questionKey, type Question } from "./question";
import type { Run } from "./runs";
import { withStanding } from "./standing";

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
  /** Best first. */
  readonly questions: readonly RankedQuestion[];
  readonly kit: KitChoice;
  readonly assumptions: readonly string[];
  readonly bill: readonly BillLine[];
  /** Of the lines with their nuts, adapters and tees to add; undefined while something needed has no price. */
  readonly price: number | undefined;
  readonly verdict: Verdict;
}

/** Reads one car against the catalogue. Deterministic: the same row and catalogue give the same report. Cars equipped alike share all but their names. */
export function reportOn(catalogue: Catalogue, car: Car, rowProblems: readonly RowProblem[] = []): CarReport {
  const equipped = equippedAs(catalogue, car);
  return inCar(rowProblems.length === 0 ? sharedReport(equipped) : reportAnew(equipped, rowProblems), car);
}

const sharedReport = madeOnce((equipped: Equipped) => reportAnew(equipped, []));

function reportAnew(equipped: Equipped, rowProblems: readonly RowProblem[]): CarReport {
  const { catalogue, car, assembly, paths } = equipped;
  const { runs, runsOfCar, kit, bill, findings: ofParts } = equipped.outfit;
  const open = distinct([...assembly.questions, ...runsOfCar.questions, ...askMaterial(car), ...openQuestions(equipped)]);
  const questions = rankQuestions(catalogue, car, open);
  const rowFindings = [...rowProblems.map(asFinding), ...unknownCodes(car), ...open.filter(({ blocks }) => blocks).map(asMissing)];
  const found = [...findingsOf(equipped, ofParts), ...kitFindings(kit, questions), ...rowFindings];
  const findings = found.map((one) => withStanding(one, car, catalogue.settings)).sort(byWorstFirst);
  return {
    car, assembly, paths, runs, findings, questions, kit, bill,
    assumptions: [...new Set([...assembly.assumptions, ...runsOfCar.assumptions])], price: priceOfLines(bill, runs), verdict: verdictOf(findings),
  };
}

/** A shared report as the report on one of the cars, with its name in the texts that name it. */
function inCar(shared: CarReport, car: Car): CarReport {
  const question = <Q extends Question>(one: Q): Q => (namesCar(one.subject) || namesCar(one.ask) ? { ...one, subject: inNameOf(car, one.subject), ask: inNameOf(car, one.ask) } : one);
  const found = (one: Finding): Finding => (namesCar(one.place) || namesCar(one.says) ? { ...one, place: inNameOf(car, one.place), says: inNameOf(car, one.says) } : one);
  const { assembly, paths, runs, kit, bill, assumptions, price, verdict } = shared;
  // Each field by its name: what is made by spreading takes twice the memory, and a hundred thousand of these may be kept.
  return {
    car, paths, runs, kit, bill, assumptions, price, verdict, findings: eachIn(shared.findings, found), questions: eachIn(shared.questions, question),
    assembly: withCar(assembly, car, eachIn(assembly.questions, question)),
  };
}

function withCar({ circuits, instances, joints, plugged, unplaced, assumptions, unknownParts, unfed, unknownPlatform }: Assembled, car: Car, questions: Assembled["questions"]): Assembled {
  return { car, circuits, instances, joints, plugged, unplaced, questions, assumptions, unknownParts, unfed, unknownPlatform };
}

/** The list itself where nothing in it changes: thousands of cars share it. */
function eachIn<T>(list: readonly T[], change: (one: T) => T): readonly T[] {
  const changed = list.map(change);
  return changed.some((one, index) => one !== list[index]) ? changed : list;
}

/** Notes do not hold a car up: with nothing above a note it is sound. */
const verdictOf = (findings: readonly Finding[]): Verdict =>
  SEVERITIES.find((severity) => severity !== "note" && findings.some((one) => one.severity === severity && one.standing === "open")) ?? "sound";

const asFinding = ({ code, column, sentence }: RowProblem): Finding => finding(code, { place: `Cars: ${column}`, seen: sentence, sentence });

const asMissing = ({ table, column, subject, ask, why }: Question): Finding =>
  finding("data-missing", { place: `${table}: ${column}${table === "Cars" ? "" : ` (${subject})`}`, seen: ask, sentence: `${ask} ${capital(why)}.`, cure: `answer in ${table}, column ${column}` });

/** An acceptance of a code that is none would be silently without effect. */
const unknownCodes = (car: Car): Finding[] =>
  [...car.accepted.keys()].filter((code) => !findingCodes.some((known) => known === code)).map((code) => finding("data-out-of-range", { place: "Cars: Accepted", seen: code, sentence: `Accepted names "${code}", which is no flag's code: nothing is accepted by it.` }));

function kitFindings({ chosen, possible }: KitChoice, questions: readonly RankedQuestion[]): Finding[] {
  const names = possible.map(({ name }) => name).join(", ");
  const ambiguous = possible.length > 1 && questions.some(({ bits }) => bits > 0);
  if (ambiguous) return [finding("kit-ambiguous", { place: names, seen: `${possible.length} sets fit what is known (${names})`, ...(questions[0] ? { cure: `ask first: ${questions[0].ask}` } : {}) })];
  if (!chosen || chosen.sets.length === 0 || chosen.madeUp.length === 0) return [];
  const place = chosen.sets.map(({ name }) => name).join(", ");
  return [finding("kit-partial", { place, seen: `${place} covers ${chosen.covered.length} of ${chosen.covered.length + chosen.madeUp.length} runs` })];
}

const distinct = (questions: readonly Question[]): Question[] => [...new Map(questions.map((question) => [questionKey(question), question])).values()];

function askMaterial(car: Car): Question[] {
  if (car.material !== undefined) return [];
  return [{ table: "Cars", column: "Material", subject: car.name, ask: "Which tube material does the customer want?", why: "the tube cannot be priced or bought", blocks: true }];
}
