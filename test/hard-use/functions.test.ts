/** Rows and catalogues as hostile as they come, through every worksheet function that takes rows. */
import fc from "fast-check";
import { parseCatalogue } from "../../src/catalogue/parse-catalogue";
import type { Catalogue } from "../../src/core/catalogue";
import { rememberCatalogue } from "../../src/functions/reports";
import { ask, cellsOf, type Answer, type AnswerCell } from "./answers";
import type { HostileCell } from "./hostile-cells";
import { CAR_HEADINGS, demoTable, hostileCars, hostileCatalogue, hostileHeadings, hostileRowsOf, namelessCars, type HostileTable } from "./hostile-tables";
import { hardUse } from "./rows";

type Rows = readonly (readonly HostileCell[])[];

/** Functions that answer about each car for itself. */
const A_CAR = ["RUNS", "PARTS", "CHECK", "ASK", "KIT", "VERDICT", "FLUID", "QUOTE", "BALANCE", "TRAVEL", "CURVE"] as const;
const someFunctions = fc.shuffledSubarray([...A_CAR, "TUBING"], { minLength: 3, maxLength: 3 });

/** Reads a catalogue as the panel does, bad rows left out. */
function catalogueOf(tables: readonly HostileTable[]): Catalogue {
  const { catalogue } = parseCatalogue(tables.map(({ headings, rows }) => ({ headings, rows })));
  return rememberCatalogue(catalogue);
}

const given = (tables: readonly HostileTable[], rows: Rows) => () => [...cellsOf(rows), ...tables.flatMap((table) => [...table.headings, ...cellsOf(table.rows)])];

function rowsAnswered(name: string, answer: Answer): readonly (readonly AnswerCell[])[] {
  if ("refused" in answer) throw new Error(`${name} refused all rows: ${answer.refused}`);
  return answer.rows;
}

hardUse("hostile cars over a hostile catalogue are all answered", 0.1, fc.tuple(hostileCatalogue, hostileCars(1, 120), someFunctions), ([tables, rows, names], counter) => {
  const { key } = catalogueOf(tables);
  for (const name of names) {
    const answered = rowsAnswered(name, ask(name, [[CAR_HEADINGS], rows, key], given(tables, rows)));
    // A row that holds anything keeps its place in every answer about cars.
    if (name === "VERDICT") expect(answered).toHaveLength(rows.length + 1);
  }
  counter.rows += rows.length;
});

hardUse("each car's answer is the same alone, beside the worst of rows, in any order and on every reading", 0.02, fc.tuple(hostileCatalogue, hostileCars(1, 40), someFunctions), ([tables, rows, names], counter) => {
  const catalogue = catalogueOf(tables);
  // Under another key, so that the second reading is worked out and not remembered.
  const again = rememberCatalogue({ ...parseCatalogue(tables).catalogue, key: `${catalogue.key} again` });
  for (const name of names.filter((one) => one !== "TUBING")) {
    const together = byCar(rowsAnswered(name, ask(name, [[CAR_HEADINGS], rows, catalogue.key], given(tables, rows))));
    for (const row of [...rows].reverse()) {
      const label = String(row[CAR_HEADINGS.indexOf("Car")]);
      const alone = rowsAnswered(name, ask(name, [[CAR_HEADINGS], [row], again.key], given(tables, rows))).slice(1);
      expect({ name, label, answer: withoutPlace(alone) }).toEqual({ name, label, answer: withoutPlace(together.get(label) ?? []) });
    }
  }
  counter.rows += rows.length;
});

/** A sentence names the row that it is about by where it stands. */
const withoutPlace = (rows: readonly (readonly AnswerCell[])[]): AnswerCell[][] => rows.map((row) => row.map((cell) => (typeof cell === "string" ? cell.replaceAll(/Cars row \d+/g, "Cars row") : cell)));

function byCar([, ...rows]: readonly (readonly AnswerCell[])[]): ReadonlyMap<string, readonly (readonly AnswerCell[])[]> {
  const cars = new Map<string, (readonly AnswerCell[])[]>();
  for (const row of rows) cars.set(String(row[0]), [...(cars.get(String(row[0])) ?? []), row]);
  return cars;
}

hardUse("totals do not hang on the order of the rows", 0.01, fc.tuple(hostileCatalogue, hostileCars(1, 60)), ([tables, rows], counter) => {
  const { key } = catalogueOf(tables);
  const totals = (cars: Rows): string[] => rowsAnswered("TUBING", ask("TUBING", [[CAR_HEADINGS], cars, key], given(tables, rows))).map((row) => row.map((cell) => (typeof cell === "number" ? cell.toPrecision(9) : cell)).join("|")).sort();
  expect(totals([...rows].reverse())).toEqual(totals(rows));
  counter.rows += rows.length;
});

hardUse("names that are blank, repeated or no text, and headings that are anything, are answered or refused with a sentence", 0.03, fc.tuple(hostileCatalogue, hostileHeadings(demoTable("Cars")), namelessCars(60), someFunctions), ([tables, headings, rows, names], counter) => {
  const { key } = catalogueOf(tables);
  for (const name of names) ask(name, [[headings], rows, key], () => [...headings, ...given(tables, rows)()]);
  counter.rows += rows.length;
});

hardUse("what somebody saw is named or said to fit nothing", 0.1, fc.tuple(hostileCatalogue, hostileHeadings(demoTable("Seen")), hostileRowsOf(demoTable("Seen"), 60)), ([tables, headings, rows], counter) => {
  const { key } = catalogueOf(tables);
  ask("IDENTIFY", [[headings], rows, key], () => [...headings, ...given(tables, rows)()]);
  counter.rows += rows.length;
});

hardUse("a catalogue as hostile as it comes gives its key, or names the cells at fault", 0.44, hostileCatalogue, (tables, counter) => {
  const answer = ask("CATALOG", [tables.map(({ headings, rows }) => [headings, ...rows])]);
  if ("refused" in answer) expect(answer.refused).toMatch(/accepted: /);
  else expect(answer.rows).toEqual([[expect.stringMatching(/^PLUMB-/)]]);
  counter.rows += tables.reduce((sum, { rows }) => sum + rows.length, 0);
});
