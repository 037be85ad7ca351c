/** Writes the sheets of the Quote view: each click one new sheet, never one that is there. */
import type { Catalogue } from "../../core/catalogue";
import type { CarReport } from "../../core/report";
import { cutListSheet } from "../../workbook/sheets/cut-list-sheet";
import { quoteSheet, type QuotedCar } from "../../workbook/sheets/quote-sheet";
import type { WorkbookPort } from "../../workbook/port";
import type { CarLine } from "../../workbook/workbook-reports";
import { benchWork, planBench } from "../bench/bench-work";
import type { CutPlanner } from "../bench/cut-planner";
import { localeHere } from "../locale";
import { count } from "../words";
import { pictureOf } from "./picture";
import { nextRevision, sheetName } from "./sheet-names";

export interface Written {
  readonly sheet: string;
  /** What the sheet lacks, in a sentence; "" when nothing. */
  readonly lacks: string;
}

export interface QuoteToWrite {
  readonly catalogue: Catalogue;
  readonly lines: readonly CarLine[];
  readonly date: Date;
  readonly revision: number | undefined;
  /** An element of the panel, in whose style the drawings are drawn. */
  readonly place: HTMLElement;
}

/** Drawings are left out above this: a spreadsheet takes only so much in one piece. */
const MOST_DRAWINGS = 12;

export async function writeQuote(port: WorkbookPort, { catalogue, lines, date, revision: wanted, place }: QuoteToWrite): Promise<Written> {
  const subject = subjectOf(lines);
  const revision = wanted ?? nextRevision("Quote", subject, await port.sheetNames());
  const { cars, lacks } = await drawn(lines, catalogue, place);
  const head = { date: sayDay(date), validUntil: sayDay(daysLater(date, catalogue.settings.quoteValidDays)), revision };
  return { sheet: await port.writeSheet(sheetName("Quote", subject, revision), quoteSheet(catalogue, cars, head)), lacks };
}

export async function writeCutList(port: WorkbookPort, { catalogue, lines, date }: Pick<QuoteToWrite, "catalogue" | "lines" | "date">, planner: CutPlanner): Promise<Written> {
  const work = benchWork(catalogue, lines);
  const plans = await planBench(work, planner);
  const subject = lines.length === 1 ? subjectOf(lines) : count(lines.length, "car");
  const content = cutListSheet(catalogue.settings, { ...work, plans }, { date: sayDay(date), cars: subject });
  return { sheet: await port.writeSheet(sheetName("Cuts", subject, nextRevision("Cuts", subject, await port.sheetNames())), content), lacks: "" };
}

/** One car goes by its own name, several by their customer's. */
export const subjectOf = (lines: readonly CarLine[]): string => (lines.length === 1 ? lines[0]?.name : lines[0]?.customer) ?? "";

async function drawn(lines: readonly CarLine[], catalogue: Catalogue, place: HTMLElement): Promise<{ readonly cars: readonly QuotedCar[]; readonly lacks: string }> {
  const reports = lines.map(({ report }) => report).filter((report): report is CarReport => report !== undefined);
  if (reports.length > MOST_DRAWINGS) return { cars: reports.map((report) => ({ report })), lacks: `It has no drawings: more than ${MOST_DRAWINGS} are too much for one sheet.` };
  try {
    const cars: QuotedCar[] = [];
    for (const report of reports) cars.push({ report, picture: await pictureOf(report, catalogue, place) });
    return { cars, lacks: "" };
  } catch {
    return { cars: reports.map((report) => ({ report })), lacks: "It has no drawing: none could be made here." };
  }
}

const sayDay = (day: Date): string => day.toLocaleDateString(localeHere(), { dateStyle: "long" });

const daysLater = (day: Date, days: number): Date => new Date(day.getFullYear(), day.getMonth(), day.getDate() + days);
