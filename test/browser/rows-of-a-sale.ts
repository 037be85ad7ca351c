/** 500 invented cars of one sale, the same at every run: sound ones, some that leave something out, and ten with one wrong cell each. */
import { demoTables } from "../../src/catalogue/demo";
import type { CellValue } from "../../src/workbook/port";

const demoCars = demoTables.find(({ name }) => name === "Cars") ?? { headings: [], rows: [] };

export const carHeadings: readonly string[] = demoCars.headings;

/** A cell that puts a sound car on hold; which car of the demo it is made of, and what the cell held before. */
export interface WrongCell {
  readonly lot: string;
  readonly column: string;
  readonly wrong: string;
  readonly right: string;
}

/** What is wrong is told by the rule that must find it, in docs/findings.md. */
const faults: readonly { readonly of: number; readonly column: string; readonly wrong: string }[] = [
  { of: 4, column: "Valves", wrong: "RV-10@front; BLK-E; APV-1; TEE-AX; SW-PD" }, // residual-on-disc
  { of: 6, column: "Valves", wrong: "PV-M@1; SW-LVL" }, // proportioning-one-sided
  { of: 8, column: "Master", wrong: "MC-4" }, // drum-master-on-disc
  { of: 11, column: "Material", wrong: "copper" }, // material-copper
  { of: 7, column: "Fluid", wrong: "DOT 4; DOT 5" }, // fluid-mixed
  { of: 10, column: "Hoses", wrong: "HOSE-FC" }, // hose-missing
  { of: 4, column: "Master", wrong: "MC-2" }, // drum-master-on-disc
  { of: 5, column: "Valves", wrong: "TEE-38; APV-1@front; TEE-AX; SW-LVL" }, // proportioning-on-front
  { of: 8, column: "Valves", wrong: "RV-10@front; RV-2@rear; TEE-38; APV-1; TEE-AX; SW-LVL" }, // residual-on-disc
  { of: 3, column: "Valves", wrong: "CV-L; CV-L; TEE-AX; SW-PD" }, // metering-doubled, proportioning-doubled, port-left-open
];

/** By their numbers in the demo, whose comments say what each is. */
const sound = [1, 2, 3, 4, 5, 6, 7, 8, 10, 11, 29];
const leavesOut = [22, 26];
const LOTS = 500;
/** Every 47th lot has a fault, every 16th of the others leaves something out. */
const [FAULT_EVERY, LEFT_OUT_EVERY] = [47, 16];

const lotName = (index: number): string => `Lot ${String(index + 1).padStart(3, "0")}`;
const demoRow = (number: number): readonly CellValue[] => demoCars.rows[number - 1] ?? [];
const wrongAt = (index: number) => (index % FAULT_EVERY === FAULT_EVERY - 1 ? faults[(index + 1) / FAULT_EVERY - 1] : undefined);

function lot(index: number): readonly CellValue[] {
  const fault = wrongAt(index);
  const pool = index % LEFT_OUT_EVERY === 0 ? leavesOut : sound;
  const row = demoRow(fault?.of ?? pool[index % pool.length] ?? 1);
  const changed: Readonly<Record<string, CellValue>> = { Car: lotName(index), Customer: `Buyer ${String((index * 7) % 90 + 1)}`, Notes: "", ...(fault && { [fault.column]: fault.wrong }) };
  return row.map((value, column) => changed[carHeadings[column] ?? ""] ?? value);
}

export const lots: readonly (readonly CellValue[])[] = Array.from({ length: LOTS }, (_, index) => lot(index));

export const wrongCells: readonly WrongCell[] = lots.flatMap((_, index) => {
  const fault = wrongAt(index);
  return fault ? [{ lot: lotName(index), column: fault.column, wrong: fault.wrong, right: String(demoRow(fault.of)[carHeadings.indexOf(fault.column)]) }] : [];
});

/** How many of the lots leave something out. */
export const lotsLeavingOut = lots.filter((_, index) => index % LEFT_OUT_EVERY === 0 && !wrongAt(index)).length;
