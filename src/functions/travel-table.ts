/** What TRAVEL answers: one row a car and circuit. */
import { judge } from "../core/balance/judgement";
import { travelOf, type CarTravel, type CircuitTravel, type Demand } from "../core/balance/travel";
import type { Catalogue } from "../core/catalogue";
import type { Equipped } from "../core/equipment";
import type { CellValue } from "../workbook/document";
import type { OfCar } from "./car-tables";
import { length, text, type Column } from "./columns";
import { assumedText, of, pressure, share, vacuum, volume } from "./physics-columns";
import { answerOf, sayGaps, type Ranges } from "./set-ups";

interface OfCircuit extends CircuitTravel {
  readonly travel: CarTravel;
  readonly limit: number;
}

const demanded = (read: (demand: Demand) => number) => of(({ atTest }: OfCircuit) => atTest && read(atTest));

export const travelColumns: readonly Column<OfCar<OfCircuit>>[] = [
  text("Car", ({ label }) => label),
  text("Circuit", of(({ circuit }) => circuit)),
  pressure("At test", of(({ travel }) => travel.testPressure)),
  volume("Clearances", demanded(({ clearance }) => clearance)),
  volume("Brakes", demanded(({ brakes }) => brakes)),
  volume("Hoses", demanded(({ hoses }) => hoses)),
  volume("Lines", demanded(({ lines }) => lines)),
  volume("Fluid", demanded(({ fluid }) => fluid)),
  volume("Air", demanded(({ air }) => air)),
  volume("Total at test", demanded(({ total }) => total)),
  pressure("Hardest stop", of(({ travel }) => travel.hardestPressure)),
  volume("Total at hardest stop", of(({ atHardest }) => atHardest?.total)),
  volume("Stroke displaces", of(({ displaces }) => displaces)),
  length("Stroke", of(({ stroke }) => stroke)),
  length("Stroke needed", of(({ needed }) => needed)),
  share("Stroke used", of(({ needed, stroke }) => (needed !== undefined && stroke !== undefined ? needed / stroke : undefined))),
  share("Pedal travel", of(({ travel }) => travel.share)),
  share("Pedal travel allowed", of(({ limit }) => limit)),
  share("Pedal travel, this circuit failed", of(({ failedShare }) => failedShare)),
  vacuum("Vacuum left", of(({ travel }) => travel.vacuumLeft)),
  text("Assumed", of(({ travel }) => assumedText(travel.assumed))),
  text("Problem", ({ problem }) => problem),
];

export function travelTable(catalogue: Catalogue, ranges: Ranges): CellValue[][] {
  const limit = catalogue.settings.travelLimit;
  const items = (facts: Equipped): OfCircuit[] => { const travel = travelOf(facts); return travel.circuits.map((one) => ({ ...one, travel, limit })); };
  return answerOf(catalogue, ranges, { columns: travelColumns, items, problem: (facts) => sayGaps({ ...travelOf(facts), blocked: judge(facts).car.blocked }) });
}
