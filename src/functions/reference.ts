/** The reference of the worksheet functions, by family: what each does, takes, answers, and an example. It reads what is written of them, so that it brings none of their code. */
import type { Units } from "./columns";
import { exampleFormulas } from "./examples";
import described from "./functions.json";
import answerHeadings from "./headings.json";

export interface FunctionEntry {
  readonly id: string;
  readonly description: string;
  /** `PLUMB.THREAD(diameter, [pitch], …)` */
  readonly signature: string;
  readonly arguments: readonly { readonly name: string; readonly says: string }[];
  /** Columns of the answer; none when it is one cell. */
  readonly columns: readonly string[];
  /** Without the equals sign. */
  readonly example: string;
}

export interface FunctionFamily {
  readonly name: string;
  readonly functions: readonly FunctionEntry[];
}

/** In the order in which a shop comes to need them. */
export function functionReference(units: Units): readonly FunctionFamily[] {
  const headings: Readonly<Record<string, readonly string[]>> = answerHeadings[units];
  const entries = new Map(described.functions.map((one) => [one.id, entryOf(one, headings[one.id] ?? [])]));
  return FAMILIES.map(({ name, ids }) => ({ name, functions: ids.flatMap((id) => entries.get(id) ?? []) }));
}

const FAMILIES: readonly { readonly name: string; readonly ids: readonly string[] }[] = [
  { name: "To begin with", ids: ["CATALOG"] },
  { name: "Cars: lines and faults", ids: ["VERDICT", "RUNS", "PARTS", "CHECK", "ASK", "KIT"] },
  { name: "Quotes and tube", ids: ["QUOTE", "FLUID", "TUBING"] },
  { name: "Balance and pressure", ids: ["BALANCE", "TRAVEL", "CURVE", "PEDAL", "VALVEOUT", "BURST"] },
  { name: "Bench", ids: ["CUTPLAN", "BENDS"] },
  { name: "Threads and fittings", ids: ["THREAD", "FITTING", "ADAPT", "IDENTIFY"] },
  { name: "Stock", ids: ["DEMAND", "FORECAST", "REORDER"] },
];

interface Described {
  readonly id: string;
  readonly description: string;
  readonly parameters: readonly { readonly name: string; readonly description?: string; readonly optional?: boolean; readonly repeating?: boolean }[];
}

function entryOf({ id, description, parameters }: Described, columns: readonly string[]): FunctionEntry {
  const words = parameters.map(({ name, optional, repeating }) => (repeating ? `${name}, …` : optional ? `[${name}]` : name));
  return {
    id, description, columns,
    signature: `PLUMB.${id}(${words.join(", ")})`,
    arguments: parameters.map(({ name, description: says = "" }) => ({ name, says })),
    example: exampleFormulas[id] ?? "",
  };
}
