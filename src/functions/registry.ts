/** The worksheet functions by the name a formula calls them. */
import * as functions from "./functions";

/** Ranges arrive row by row with blanks as 0; optionals left out arrive as null. */
export type WorksheetFunction = (...args: never[]) => unknown;

export const worksheetFunctions: Readonly<Record<string, WorksheetFunction>> = {
  CATALOG: functions.catalog,
  THREAD: functions.thread,
  FITTING: functions.fitting,
  ADAPT: functions.adapt,
  RUNS: functions.runs,
  PARTS: functions.parts,
  CHECK: functions.check,
  ASK: functions.ask,
  KIT: functions.kit,
  IDENTIFY: functions.identify,
  VERDICT: functions.verdict,
  FLUID: functions.fluid,
  QUOTE: functions.quote,
  TUBING: functions.tubing,
  BALANCE: functions.balance,
  TRAVEL: functions.travel,
  CURVE: functions.curve,
  VALVEOUT: functions.valveout,
  PEDAL: functions.pedal,
  CUTPLAN: functions.cutplan,
  BENDS: functions.bends,
  BURST: functions.burst,
};
