/** All cars of a workbook in the order a shop works through them, and which one is chosen. */
import { SEVERITIES, type Severity } from "../core/finding";
import type { CarLine, WorkbookReading } from "../workbook/workbook-reports";
import { recall, remember } from "./remembered";

/** What a car's verdict asks of the shop; a car that could not be worked out stands with those on hold. */
export const CAR_GROUPS = ["hold", "decide", "watch", "sound"] as const;
export type CarGroup = (typeof CAR_GROUPS)[number];

export interface CarFilter {
  /** Undefined shows every car. */
  readonly group: CarGroup | undefined;
  /** Words that name, customer or car must have, all of them. */
  readonly search: string;
}

export function groupOf({ verdict }: CarLine): CarGroup {
  if (verdict === undefined || verdict === "stop") return "hold";
  return verdict === "decide" || verdict === "watch" ? verdict : "sound";
}

/** Worst verdict first; among equals the car with most open findings of the worst kinds, then the order of rows. */
export function worstFirst(cars: readonly CarLine[]): readonly CarLine[] {
  const known = sorted.get(cars);
  if (known) return known;
  const order = cars.map((line) => ({ line, rank: rankOf(line) })).sort((a, b) => a.rank - b.rank).map(({ line }) => line);
  sorted.set(cars, order);
  return order;
}

export const countOpen = ({ findings }: CarLine, severity: Severity): number => findings.filter((one) => one.severity === severity && one.standing === "open").length;

export const openQuestionsOf = ({ report }: CarLine): number => report?.questions.length ?? 0;

/** The cars that the filter leaves, worst first. */
export function filterCars(cars: readonly CarLine[], { group, search }: CarFilter): readonly CarLine[] {
  const words = search.toLowerCase().split(/\s+/).filter((word) => word !== "");
  return worstFirst(cars).filter((line) => (group === undefined || groupOf(line) === group) && words.every((word) => textOf(line).includes(word)));
}

/** How many cars of each group the search leaves. */
export function groupCounts(cars: readonly CarLine[], search: string): Readonly<Record<CarGroup, number>> {
  const counts = { hold: 0, decide: 0, watch: 0, sound: 0 };
  for (const line of filterCars(cars, { group: undefined, search })) counts[groupOf(line)] += 1;
  return counts;
}

/** What is known of the car beside its name. */
export const sayModel = ({ report }: CarLine): string => [report?.car.platform, report?.car.year].filter((one) => one !== undefined).join(", ");

const textOf = (line: CarLine): string => `${line.name} ${line.customer} ${sayModel(line)}`.toLowerCase();

/** Sorting 5,000 cars for every view again would be felt. */
const sorted = new WeakMap<readonly CarLine[], readonly CarLine[]>();

/** Counted once a car: after an edit all others are as before. */
const ranks = new WeakMap<CarLine, number>();

/** The lower the worse: the group, then the open findings of each kind in turn, three digits each. */
function rankOf(line: CarLine): number {
  const known = ranks.get(line);
  if (known !== undefined) return known;
  const rank = SEVERITIES.reduce((sum, severity) => sum * 1000 + 999 - Math.min(999, countOpen(line, severity)), CAR_GROUPS.indexOf(groupOf(line)));
  ranks.set(line, rank);
  return rank;
}

export interface ChosenCar {
  /** The chosen car as it stands now, or the worst one; undefined when there are no cars. */
  of(reading: WorkbookReading): CarLine | undefined;
  choose(line: CarLine): void;
}

/** One choice for all views. It is known by table and name, since rows move; another workbook that lacks the car has a choice of its own. */
export function chosenCar(): ChosenCar {
  let made: Choice | undefined;
  return {
    of: ({ cars }) => {
      const chosen = made ?? parsed(recall(KEY));
      const named = cars.filter(({ table, name }) => table === chosen?.table && name === chosen.name);
      return named.find(({ row }) => row === chosen?.row) ?? named[0] ?? worstFirst(cars)[0];
    },
    choose: ({ table, row, name }) => {
      made = { table, row, name };
      remember(KEY, JSON.stringify(made));
    },
  };
}

const KEY = "car";

type Choice = Pick<CarLine, "table" | "row" | "name">;

/** What was kept may be from an older panel. */
function parsed(text: string | undefined): Choice | undefined {
  try {
    const kept: unknown = JSON.parse(text ?? "null");
    return isChoice(kept) ? kept : undefined;
  } catch {
    return undefined;
  }
}

const isChoice = (kept: unknown): kept is Choice => typeof kept === "object" && kept !== null && "table" in kept && "row" in kept && "name" in kept;
