/** What the adviser's answers look like: questions, sets, names for bodies. */
import { parseSeen, type NamedBody } from "../catalogue/parse-seen";
import { standardThreads } from "../catalogue/standard/threads";
import { sayTableError } from "../catalogue/table-error";
import type { RankedQuestion } from "../core/ask";
import type { Catalogue } from "../core/catalogue";
import { decidingPort, identify, type Identification } from "../core/identify";
import type { Kit, KitChoice } from "../core/kits";
import type { CarReport } from "../core/report";
import type { CellValue } from "../workbook/document";
import { badValue } from "./answer";
import type { OfCar } from "./car-tables";
import { laidOut, rounded, text, type Column } from "./columns";
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
  text("Decides", ofItem(({ answers }) => answers.map(({ answer, leaves }) => `${answer} → ${leaves.join(", ")}`).join(" | "))),
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
  text("Set", chosen(({ set }) => set?.name ?? "straight tube")),
  text("Price", chosen(({ set }) => set?.price)),
  text("On hand", chosen(({ set }) => set?.onHand)),
  text("Covered", chosen(({ covered }) => covered.map(({ run }) => run.number).join("; "))),
  text("Made up", chosen(({ madeUp }) => madeUp.map(({ number }) => number).join("; "))),
  text("Adapters", chosen(({ covered }) => covered.flatMap(({ adapters }) => adapters.map(({ adapter }) => adapter.name)).join("; "))),
  text("Cost", chosen(({ cost }) => cost)),
  text("Straight tube cost", ofItem(({ choice }) => choice.straight.cost)),
  text("Possible sets", ofItem(({ choice }) => choice.possible.map(({ name }) => name).join("; "))),
  text("Problem", ({ item, problem }) => (item ? kitProblem(item) : problem)),
];

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

interface Named extends NamedBody {
  readonly rank: number | "";
  readonly found?: Identification;
  readonly next?: Identification | undefined;
}

const whenFound = <V>(read: (found: Identification) => V) => ({ found }: Named): V | undefined => found && read(found);

export const identifyColumns: readonly Column<Named>[] = [
  text("Car", ({ car }) => car),
  text("Body", ({ body }) => body),
  text("Rank", ({ rank }) => rank),
  text("Component", whenFound(({ component }) => component.name)),
  text("Kind", whenFound(({ component }) => component.kind)),
  text("Matched", whenFound(({ matched }) => matched.map(({ seen, port }) => `${seen.label || "?"} = ${port.name}`).join("; "))),
  text("Unexplained", whenFound(({ unexplained }) => unexplained.map(({ label }) => label || "?").join("; "))),
  text("Not seen", whenFound(({ notSeen }) => notSeen.map(({ name, thread }) => `${name}${thread ? ` (${thread.name})` : ""}`).join("; "))),
  text("Against", whenFound(({ against }) => against.join("; "))),
  text("Deciding port", ({ found, next }) => (found && next ? sayDeciding(found, next) : "")),
  text("Problem", ({ found, errors }) => [...(found ? [] : ["no listed body has a port like these"]), ...errors.map(sayTableError)].join(" ")),
];

function sayDeciding(first: Identification, second: Identification): string {
  const port = decidingPort(first, second) ?? decidingPort(second, first);
  if (!port) return `none: ${second.component.name} has the same ports`;
  return `${port.name}${port.thread ? ` ${port.thread.name}` : ""} (${decidingPort(first, second) ? first.component.name : second.component.name} has it)`;
}

const MOST_NAMES = 5;

/** Up to five names for each body seen, best first. */
export function identifyTable(catalogue: Catalogue, headings: readonly (readonly unknown[])[], rows: readonly (readonly unknown[])[]): CellValue[][] {
  const { bodies, errors } = parseSeen(headings[0] ?? [], rows);
  if (bodies.length === 0 && errors.length > 0) throw badValue(errors.map(sayTableError).join(" "));
  const threads = standardThreads.map(({ thread }) => thread);
  const named = bodies.flatMap((body): Named[] => {
    const ranked = identify(catalogue, threads, body).slice(0, MOST_NAMES);
    return ranked.length === 0 ? [{ ...body, rank: "" }] : ranked.map((found, index) => ({ ...body, rank: index + 1, found, next: index === 0 ? ranked[1] : ranked[0] }));
  });
  return laidOut(identifyColumns, named, catalogue.settings.units);
}
