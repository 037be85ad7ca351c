/** What CURVE answers: points to plot, unladen before laden. */
import { idealRear } from "../core/balance/axles";
import { atDeceleration, EFFICIENCY_ON, type AtDeceleration } from "../core/balance/balance-of";
import { firstLock } from "../core/balance/braking";
import type { CarBraking } from "../core/balance/car-braking";
import { judge, type UnderLoad } from "../core/balance/judgement";
import { valvePoints } from "../core/balance/valve-points";
import type { Catalogue } from "../core/catalogue";
import type { Equipped } from "../core/equipment";
import type { CellValue } from "../workbook/document";
import { badValue } from "./answer";
import type { OfCar } from "./car-tables";
import { text, type Column } from "./columns";
import { adhesion, assumedText, deceleration, force, of, pressure } from "./physics-columns";
import { answerOf, sayGaps, type Ranges } from "./set-ups";

interface CurvePoint extends AtDeceleration {
  readonly car: CarBraking;
  readonly under: UnderLoad;
  readonly mark: string;
}

export const curveColumns: readonly Column<OfCar<CurvePoint>>[] = [
  text("Car", ({ label }) => label),
  text("Load", of(({ under }) => under.load.load)),
  deceleration("Deceleration", of(({ z }) => z)),
  pressure("Line pressure", of((point) => point.pressure)),
  pressure("Front pressure", of(({ frontLine }) => frontLine)),
  pressure("Rear pressure", of(({ rearLine }) => rearLine)),
  force("Front force", of(({ frontForce }) => frontForce)),
  force("Rear force", of(({ rearForce }) => rearForce)),
  force("Ideal front force", of(({ z, under }) => (z - idealRear(under.load.stance, z)) * under.load.weight)),
  force("Ideal rear force", of(({ z, under }) => idealRear(under.load.stance, z) * under.load.weight)),
  adhesion("Front uses", of(({ frontUses }) => frontUses)),
  adhesion("Rear uses", of(({ rearUses }) => rearUses)),
  adhesion("Efficiency line allows", of(({ z, car }) => (z >= 0.1 ? (z - 0.1) / car.facts.catalogue.settings.efficiencyLine + 0.2 : undefined))),
  text("Mark", of(({ mark }) => mark)),
  text("Assumed", of(({ car }) => assumedText(car.assumed))),
  text("Problem", ({ problem }) => problem),
];

const USUAL_POINTS = 41;

/** Points evenly spaced in deceleration up to the highest adhesion of Settings, and one more at each knee and lock. */
export function curveTable(catalogue: Catalogue, ranges: Ranges, points = USUAL_POINTS): CellValue[][] {
  if (!Number.isInteger(points) || points < 2 || points > 1000) throw badValue(`points: read "${points}"; accepted: a whole number from 2 to 1000.`);
  return answerOf(catalogue, ranges, { columns: curveColumns, items: (facts) => curvePoints(facts, points), problem: (facts) => sayGaps(judge(facts).car) });
}

function curvePoints(facts: Equipped, points: number): CurvePoint[] {
  const { car, under } = judge(facts);
  const top = facts.catalogue.settings.highestAdhesion;
  const even = Array.from({ length: points }, (_, index) => ({ z: (top * index) / (points - 1), mark: "" }));
  return under.flatMap((one) =>
    [...even, ...marksOn(car, one).filter(({ z }) => z <= top)].sort((a, b) => a.z - b.z).flatMap(({ z, mark }) => {
      const point = atDeceleration(car, one, z);
      return point ? [{ ...point, z, car, under: one, mark }] : [];
    }));
}

/** Where valves begin or cease to act, and where the first axle locks. */
function marksOn(car: CarBraking, under: UnderLoad): { readonly z: number; readonly mark: string }[] {
  const knees = valvePoints(car, under).map(({ z, valve, does }) => ({ z, mark: `${valve} ${does}` }));
  const locks = EFFICIENCY_ON.flatMap((on) => { const lock = firstLock(under.braking, on); return lock ? [{ z: lock.z, mark: `${lock.axle} locks on ${on}` }] : []; });
  return [...knees, ...locks];
}
