/** What BALANCE answers: one row a car and load. */
import { balanceOf, EFFICIENCY_ON, USES_AT, type AtDeceleration, type CarBalance } from "../core/balance/balance-of";
import type { CarBraking } from "../core/balance/car-braking";
import { judge } from "../core/balance/judgement";
import { ruleFigures } from "../core/balance/rule-figures";
import type { Catalogue } from "../core/catalogue";
import type { Equipped } from "../core/equipment";
import type { CellValue } from "../workbook/document";
import type { OfCar } from "./car-tables";
import { rounded, text, type Column } from "./columns";
import { adhesion, assumedText, deceleration, distance, force, of, pressure, share } from "./physics-columns";
import { answerOf, sayGaps, type Ranges } from "./set-ups";

interface Balanced extends CarBalance {
  readonly car: CarBraking;
}

function balancesOf(facts: Equipped): Balanced[] {
  const judged = judge(facts);
  return balanceOf(judged).map((one) => ({ ...one, car: judged.car }));
}

const sayStretches = (stretches: readonly { readonly from: number; readonly to: number }[]): string => stretches.map(({ from, to }) => `${rounded(from, 3)}–${rounded(to, 3)}`).join("; ");

/** A single figure as a number, several as text, none as nothing. */
const oneOrMore = (figures: readonly number[]): string | number | undefined => (figures.length === 1 ? rounded(figures[0] as number, 4) : figures.map((one) => rounded(one, 4)).join("; ") || undefined);

type Row = OfCar<Balanced>;

const atColumns = (name: string, index: number): Column<Row>[] => {
  const at = <V>(read: (point: AtDeceleration) => V) => of(({ at: points }: Balanced) => { const point = points[index]; return point && read(point); });
  return [
    deceleration(`${name} deceleration`, at(({ z }) => z)),
    pressure(`${name} line pressure`, at((point) => point.pressure)),
    pressure(`${name} front pressure`, at(({ frontLine }) => frontLine)),
    pressure(`${name} rear pressure`, at(({ rearLine }) => rearLine)),
    force(`${name} front force`, at(({ frontForce }) => frontForce)),
    force(`${name} rear force`, at(({ rearForce }) => rearForce)),
    share(`${name} rear share`, at(({ rearShare }) => rearShare)),
    force(`${name} pedal force`, at(({ pedal }) => pedal)),
  ];
};

const failedColumns = (name: string, index: number): Column<Row>[] => {
  const failed = <V>(read: (one: CarBalance["failed"][number]) => V) => of(({ failed: circuits }: Balanced) => { const one = circuits[index]; return one && read(one); });
  return [
    text(`${name} circuit`, failed(({ circuit }) => circuit)),
    deceleration(`${name} circuit failed`, failed(({ z }) => z)),
    distance(`${name} circuit failed stop`, failed(({ stop }) => stop?.distance)),
  ];
};

const ruled = <V>(read: (rule: ReturnType<typeof ruleFigures>) => V) => of(({ car }: Balanced) => read(ruleFigures(car.facts.catalogue.settings)));

export const balanceColumns: readonly Column<Row>[] = [
  text("Car", ({ label }) => label),
  text("Load", of(({ under }) => under.load.load)),
  text("Locks first", of(({ rearFirst }) => (rearFirst.length === 0 ? "front" : `rear on adhesion ${sayStretches(rearFirst)}, else front`))),
  text("Critical deceleration (g)", of(({ critical }) => oneOrMore(critical))),
  ...["Low", "Middle", "High"].flatMap(atColumns),
  ...USES_AT.flatMap((z, index) => [
    adhesion(`Front uses at ${z} g`, of(({ uses }: Balanced) => uses[index]?.point?.frontUses)),
    adhesion(`Rear uses at ${z} g`, of(({ uses }: Balanced) => uses[index]?.point?.rearUses)),
  ]),
  ...EFFICIENCY_ON.map((on, index) => share(`Efficiency on ${on}`, of(({ efficiency }: Balanced) => efficiency[index]?.value))),
  deceleration("Above efficiency line", of(({ line }) => line?.margin)),
  ...["First", "Second"].flatMap(failedColumns),
  text("Rule", ruled(({ name }) => name)),
  deceleration("Stop deceleration", of(({ stop }) => stop?.z)),
  distance("Stop", of(({ stop }) => stop?.distance)),
  distance("Stop allowed", ruled(({ stop }) => stop)),
  text("Stop held by", of(({ stop }) => stop?.heldBy)),
  distance("Circuit failed stop allowed", ruled(({ failed }) => failed)),
  deceleration("Without assist deceleration", of(({ withoutAssist }) => withoutAssist?.z)),
  distance("Without assist stop", of(({ withoutAssist }) => withoutAssist?.distance)),
  distance("Without assist stop allowed", ruled(({ unpowered }) => unpowered)),
  text("Assumed", of(({ car }) => assumedText(car.assumed))),
  text("Problem", ({ problem }) => problem),
];

export const balanceTable = (catalogue: Catalogue, ranges: Ranges): CellValue[][] =>
  answerOf(catalogue, ranges, { columns: balanceColumns, items: balancesOf, problem: (facts) => sayGaps(judge(facts).car) });
