/** BALANCE of ten thousand cars beside a bare loop and beside a spreadsheet's own formulas; figures are compared before times are. */
import { parseCars } from "../src/catalogue/parse-cars";
import { balanceOf } from "../src/core/balance/balance-of";
import { judge } from "../src/core/balance/judgement";
import { equippedAs } from "../src/core/equipment";
import { inPoundsForce, inPsi, newtons, pascals } from "../src/core/quantity";
import { balanceTable } from "../src/functions/balance-tables";
import { ADHESIONS, balanceCars, brakesOf, DECELERATIONS, USES } from "./balance-cars";
import { BARE_COLUMNS, bareBalance } from "./bare-balance";
import { measured, row, timed, type BenchRow } from "./measure";
import { spreadsheetBalance } from "./spreadsheet-balance";
import { freshCatalogue, freshHeadings, ownFigureCars, shopCars, unlikeCars, type Rows } from "./workload";

const CARS = 10_000;
const RUNS = 5;

export function balanceRows(): BenchRow[] {
  const { headings, rows } = balanceCars(CARS);
  const brakes = brakesOf(freshCatalogue(0), { headings, rows });
  const figures = Float64Array.from(rows.flatMap((cells) => cells.slice(-4).map(Number)));
  const answers = new Float64Array(CARS * BARE_COLUMNS);
  const bare = measured(25, () => timed(() => { bareBalance(brakes, figures, answers); }));
  const table = balanceTable(freshCatalogue(99), [[headings], rows]);
  const off = differences(table, (car, column) => answers[car * BARE_COLUMNS + column] as number);
  const whole = measured(RUNS, (run) => timed(() => balanceTable(freshCatalogue(run), [[freshHeadings(headings, run)], rows])));
  const physics = measured(RUNS, (run) => physicsOnly(run, { headings, rows }));
  const sheet = spreadsheetBalance(brakes, figures);
  const offSheet = sheet && differences(table, sheet.figure);
  return [
    ...[["a shop's cars", shopCars], ["cars of which no two weigh alike", ownFigureCars], ["cars of which no two have the same parts", unlikeCars]].map(([name, cars]) => coldBalance(name as string, (cars as typeof shopCars)(CARS))),
    row("BALANCE", "the same figures as one loop over typed arrays", bare, { against: `${off} of ${CARS * BARE_COLUMNS} figures differ` }),
    row("BALANCE", `judging ${CARS} cars and their figures, rows read`, physics, { most: Number((3 * bare.median).toPrecision(3)), against: "at most 3 times the loop" }),
    ...(sheet ? [
      row("BALANCE", `${CARS} cars on one list of parts, both loads, from cells to cells`, whole, { most: sheet.recalculation / 5, against: "at most a fifth of the spreadsheet's time" }),
      { area: "BALANCE", what: `the same of one load as ${sheet.formulas} formulas in ${sheet.program}, recalculation`, figure: sheet.recalculation, unit: "ms", against: `${String(offSheet)} of ${CARS * BARE_COLUMNS} figures differ`, met: offSheet === 0 },
    ] : [row("BALANCE", `${CARS} cars on one list of parts`, whole, { against: "no LibreOffice here" })]),
  ];
}

const coldBalance = (name: string, { headings, rows }: Rows): BenchRow =>
  row("BALANCE", `${CARS} of ${name}, cold`, measured(3, (run) => timed(() => balanceTable(freshCatalogue(200 + run), [[freshHeadings(headings, run)], rows]))), { most: 1000 });

/** From cars already read to their figures, as the loop starts from numbers already read. */
function physicsOnly(run: number, { headings, rows }: Rows): number {
  const catalogue = freshCatalogue(100 + run);
  const cars = parseCars(headings, rows).cars.flatMap(({ car }) => (car ? [equippedAs(catalogue, car)] : []));
  return timed(() => { for (const car of cars) balanceOf(judge(car)); });
}

/** How many figures of the unladen rows are not those of the peer, to the digits shown. */
function differences([headings = [], ...rows]: readonly (readonly unknown[])[], peer: (car: number, column: number) => number): number {
  const columns = COLUMNS.map(({ heading, shown, digits }) => ({ at: headings.indexOf(heading), shown, within: 0.51 * 10 ** -digits }));
  if (columns.some(({ at }) => at < 0)) throw new Error(`BALANCE has no column ${COLUMNS.find((_, index) => (columns[index]?.at ?? -1) < 0)?.heading}`);
  const unladen = rows.filter((cells) => cells[1] === "unladen");
  return unladen.reduce((sum, cells, car) => sum + columns.filter(({ at, shown, within }, column) => !(Math.abs(Number(cells[at]) - shown(peer(car, column))) <= within)).length, 0);
}

const pressure = { digits: 1, shown: (value: number) => inPsi(pascals(value)), unit: "(psi)" };
const force = { digits: 1, shown: (value: number) => inPoundsForce(newtons(value)), unit: "(lbf)" };
const share = { digits: 2, shown: (value: number) => value * 100, unit: "(%)" };
const adhesion = { digits: 4, shown: (value: number) => value, unit: "(adhesion)" };

/** In the order in which the peers reckon them. */
const COLUMNS = [
  ...Object.keys(DECELERATIONS).flatMap((name) => [
    { ...pressure, heading: `${name} line pressure` }, { ...pressure, heading: `${name} front pressure` }, { ...pressure, heading: `${name} rear pressure` },
    { ...force, heading: `${name} front force` }, { ...force, heading: `${name} rear force` }, { ...share, heading: `${name} rear share` }, { ...force, heading: `${name} pedal force` },
  ]),
  ...USES.flatMap((z) => [{ ...adhesion, heading: `Front uses at ${z} g` }, { ...adhesion, heading: `Rear uses at ${z} g` }]),
  ...ADHESIONS.map((mu) => ({ ...share, heading: `Efficiency on ${mu}` })),
].map((column) => ({ ...column, heading: `${column.heading} ${column.unit}` }));
