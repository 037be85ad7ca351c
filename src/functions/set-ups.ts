/** Answers about the physics of cars: cars equipped alike share their figures. */
import { sayTableError } from "../catalogue/table-error";
import type { Gap } from "../core/balance/figures";
import type { Catalogue } from "../core/catalogue";
import { equippedAs, type Equipped } from "../core/equipment";
import type { CellValue } from "../workbook/document";
import type { OfCar } from "./car-tables";
import { laidOut, type Column } from "./columns";
import { carRows } from "./reports";

/** How a car's part of an answer is made. */
interface Answer<T> {
  readonly columns: readonly Column<OfCar<T>>[];
  readonly items: (facts: Equipped) => readonly T[];
  /** What keeps figures open. */
  readonly problem: (facts: Equipped) => string;
}

/** The heading row, then each car's rows, or one that says why it has none. Cars equipped alike share their figures. */
export function answerOf<T>(catalogue: Catalogue, [headings, rows]: Ranges, { columns, items, problem }: Answer<T>): CellValue[][] {
  const { units } = catalogue.settings;
  const shared = new Map<Equipped, CellValue[][]>();
  const cellsOf = (facts: Equipped): CellValue[][] => {
    const known = shared.get(facts) ?? laidOut(columns, itemRows(items(facts), problem(facts)), units).slice(1);
    shared.set(facts, known);
    return known;
  };
  const each = carRows(headings ?? [], rows ?? []).flatMap(({ name, car, errors }): CellValue[][] => {
    const wrong = errors.map(sayTableError).join(" ");
    const cells = car ? cellsOf(equippedAs(catalogue, car)) : laidOut(columns, [{ label: "", problem: "" }], units).slice(1);
    // The car's name stands first and its problem last.
    return cells.map((row) => {
      const own = [...row];
      own[0] = name;
      if (wrong !== "") own[own.length - 1] = [wrong, row.at(-1)].filter((one) => one !== "").join(" ");
      return own;
    });
  });
  return [...laidOut(columns, [], units), ...each];
}

const itemRows = <T>(found: readonly T[], problem: string): OfCar<T>[] => (found.length > 0 ? found.map((item) => ({ label: "", problem, item })) : [{ label: "", problem }]);

export type Ranges = readonly (readonly (readonly unknown[])[])[];

/** What keeps figures open, by table, row and column. */
export function sayGaps({ missing, blocked }: { readonly missing: readonly Gap[]; readonly blocked?: string | undefined }): string {
  const said = missing.map(({ table, column, subject }) => (table === "Cars" ? `Cars: ${column}` : `${table} ${subject}: ${column}`));
  return [...(blocked ? [blocked] : []), ...(said.length > 0 ? [`no figure for ${said.join("; ")}`] : [])].join("; ");
}
