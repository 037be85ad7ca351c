/** What the adviser's answers look like: questions and sets. */
import type { RankedQuestion } from "../core/ask";
import { sumPrices } from "../core/fittings";
import { kitName, type Kit, type KitChoice } from "../core/kits";
import type { CarReport } from "../core/report";
import type { OfCar } from "./car-tables";
import { rounded, text, type Column } from "./columns";
import type { ReportedRow } from "./reports";

interface Asked extends RankedQuestion {
  readonly rank: number;
}

const ofItem = <T, V>(read: (item: T) => V) => ({ item }: OfCar<T>): V | undefined => (item === undefined ? undefined : read(item));

export const askColumns: readonly Column<OfCar<Asked>>[] = [
  text("Car", ({ label }) => label),
  text("Rank", ofItem(({ rank }) => rank)),
  text("Question", ({ item, problem }) => item?.ask ?? problem),
  text("Table", ofItem(({ table }) => table)),
  text("Column", ofItem(({ column }) => column)),
  text("About", ofItem(({ subject }) => subject)),
  text("Answers", ofItem(({ answers }) => answers.map(({ answer }) => answer).join(" | "))),
  text("Why", ofItem(({ why }) => why)),
  text("Decides", ofItem(({ answers }) => answers.filter(({ decides }) => decides !== "").map(({ answer, decides }) => `${answer} → ${decides}`).join(" | "))),
  text("Bits", ofItem(({ bits }) => rounded(bits, 3))),
];

export const askedOf = ({ questions }: CarReport): Asked[] => questions.map((question, index) => ({ ...question, rank: index + 1 }));

interface KitOfCar {
  readonly choice: KitChoice;
  readonly report: CarReport;
}

const chosen = <V>(read: (kit: Kit) => V) => ofItem(({ choice }: KitOfCar) => choice.chosen && read(choice.chosen));

export const kitColumns: readonly Column<OfCar<KitOfCar>>[] = [
  text("Car", ({ label }) => label),
  text("Set", chosen(kitName)),
  text("Price", chosen(({ sets }) => (sets.length === 0 ? undefined : sumPrices(sets.map(({ price }) => price))))),
  text("On hand", chosen(({ sets }) => (sets.length === 0 || sets.some(({ onHand }) => onHand === undefined) ? undefined : Math.min(...sets.map(({ onHand = 0 }) => onHand))))),
  text("Covered", chosen(({ covered }) => covered.map(({ run }) => run.number).join("; "))),
  text("Made up", chosen(({ madeUp }) => madeUp.map(({ number }) => number).join("; "))),
  text("Adapters", chosen(({ covered }) => covered.flatMap(({ adapters }) => adapters.map(({ adapter }) => adapter.name)).join("; "))),
  text("Cost", chosen(({ cost }) => cost)),
  text("Straight tube cost", ofItem(({ choice }) => choice.straight.cost)),
  text("Possible sets", ofItem(({ choice }) => choice.possible.map(({ name }) => name).join("; "))),
  text("Problem", ({ item, problem }) => (item ? kitProblem(item) : problem)),
  text("Unused", chosen(({ unused }) => unused.map(({ from, to }) => `${from} to ${to}`).join("; "))),
  text("Next best", ofItem(({ choice }) => sayNextBest(choice))),
];

/** The next best way, and why it lost. */
function sayNextBest({ chosen: best, nextBest }: KitChoice): string {
  if (!best || !nextBest) return "";
  const [cost, other] = [best.cost, nextBest.cost];
  if (other === undefined) return `${kitName(nextBest)}: not priced in full`;
  if (cost === undefined) return kitName(nextBest);
  const dearer = rounded(other - cost, 2);
  const less = best.covered.length - nextBest.covered.length;
  const runs = less > 0 ? `covers ${less} ${less === 1 ? "run" : "runs"} fewer` : less < 0 ? `covers ${-less} more` : "covers as many runs";
  return `${kitName(nextBest)}: ${dearer === 0 ? "the same cost" : `${dearer.toFixed(2)} dearer`}, ${runs}`;
}

/** Why a choice stands open or rests on less than it should. */
function kitProblem({ choice, report }: KitOfCar): string {
  const first = report.questions[0]?.ask;
  if (!choice.chosen) return `no runs to cover yet${first ? `: ${first}` : ""}`;
  const ambiguous = report.findings.find(({ code }) => code === "kit-ambiguous");
  if (ambiguous) return `${ambiguous.says} ${first ?? ""}`;
  return choice.chosen.cost === undefined ? "a run cannot be joined or measured, or something has no price" : "";
}

export const kitsOf = (row: ReportedRow): OfCar<KitOfCar>[] => {
  const { label, problem, report } = row;
  return [report ? { label, problem: "", item: { choice: report.kit, report } } : { label, problem }];
};
