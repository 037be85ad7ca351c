/** The parts of the program that the add-in's functions come in, each loaded when a cell first asks for it. */
import { answer, notAvailable, unknownKeyOf } from "./answer";

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

/**
 * What Excel calls: the function itself, once its part is there. A part that does not come answers #N/A; the next recalculation asks for it again.
 * @param readCatalogue reads the workbook's tables for a key that this session does not know, as in a workbook that was just opened
 */
export const whenLoaded = (name: string, load: ProgramPart["load"], readCatalogue?: (key: string) => Promise<void>) => async (...args: readonly unknown[]): Promise<unknown> => {
  const previewed = isPreview(args.at(-1));
  if (previewed && !quick.has(name)) return answer(() => { throw notAvailable(`PLUMB.${name} is worked out when the formula is entered, not while it is being typed.`); });
  const functions = await load().catch(() => answer(() => { throw notAvailable(notLoaded(name)); }));
  const run = functions[name.toLowerCase()] as (...args: readonly unknown[]) => unknown;
  try {
    return run(...args);
  } catch (error) {
    const key = unknownKeyOf(error);
    if (key === undefined || previewed || !readCatalogue) throw error;
    await readCatalogue(key).catch(() => undefined); // what stays unknown the second run says
  }
  return run(...args);
};

/** Functions that are as quick as the preview of a formula has to be: they look at single figures, and no table of cars. */
const quick = new Set(["THREAD", "FITTING", "ADAPT", "VALVEOUT", "PEDAL", "BURST"]);

/** Excel hands every function one thing more than its arguments, which says among others whether a part of a formula is only looked at. */
const isPreview = (invocation: unknown): boolean =>
  typeof invocation === "object" && invocation !== null && String((invocation as { readonly isInValuePreview?: unknown }).isInValuePreview) === "true";

/**
 * Reads once for each key, however many cells ask for it at the same time: what one reading did not bring, the next would not bring either.
 * A reading that fails is tried again when the key is next asked for.
 */
export function oncePerKey(read: () => Promise<void>): (key: string) => Promise<void> {
  const readings = new Map<string, Promise<void>>();
  return (key) => {
    const reading = readings.get(key) ?? read();
    readings.set(key, reading);
    reading.catch(() => { readings.delete(key); });
    return reading;
  };
}

const notLoaded = (name: string): string =>
  `The part of Plumbline that answers ${name} could not be loaded. Check that the address the add-in comes from can be reached, then recalculate this cell (F2, Enter).`;
