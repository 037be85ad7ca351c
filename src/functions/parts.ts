/** The parts of the program that the add-in's functions come in, each loaded when a cell first asks for it. */
import { answer, notAvailable } from "./answer";

type Functions = Readonly<Record<string, (...args: never[]) => unknown>>;

interface ProgramPart {
  readonly load: () => Promise<Functions>;
  readonly functions: readonly string[];
}

export const programParts: readonly ProgramPart[] = [
  { load: () => import(/* webpackChunkName: "cars" */ "./functions"), functions: ["CATALOG", "RUNS", "PARTS", "CHECK", "ASK", "KIT", "VERDICT"] },
  { load: () => import(/* webpackChunkName: "tubing" */ "./tubing-functions"), functions: ["TUBING"] },
  { load: () => import(/* webpackChunkName: "threads" */ "./thread-functions"), functions: ["THREAD", "FITTING", "ADAPT", "IDENTIFY"] },
  { load: () => import(/* webpackChunkName: "quotes" */ "./quote-functions"), functions: ["FLUID", "QUOTE"] },
  { load: () => import(/* webpackChunkName: "physics" */ "./physics-functions"), functions: ["BALANCE", "TRAVEL", "CURVE", "VALVEOUT", "PEDAL"] },
  { load: () => import(/* webpackChunkName: "workshop" */ "./workshop-functions"), functions: ["CUTPLAN", "BENDS", "BURST"] },
  { load: () => import(/* webpackChunkName: "stock" */ "./stock-functions"), functions: ["DEMAND", "FORECAST", "REORDER"] },
];

/** What Excel calls: the function itself, once its part is there. A part that does not come answers #N/A; the next recalculation asks for it again. */
export const whenLoaded = (name: string, load: ProgramPart["load"]) => async (...args: readonly unknown[]): Promise<unknown> => {
  const functions = await load().catch(() => answer(() => { throw notAvailable(notLoaded(name)); }));
  return (functions[name.toLowerCase()] as (...args: readonly unknown[]) => unknown)(...args);
};

const notLoaded = (name: string): string =>
  `The part of Plumbline that answers ${name} could not be loaded. Check that the address the add-in comes from can be reached, then recalculate this cell (F2, Enter).`;
