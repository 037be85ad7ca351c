/**
 * Threads met on the brake parts of older cars. Sizes are nominal; the limits of size are computed from the standards' formulas in core/thread.
 * The list itself is common practice, no source; each row names the standard that defines its thread.
 */
import { threadNamed, type Thread } from "../../core/thread";

export interface StandardThread {
  readonly thread: Thread;
  readonly series: "UNF" | "UN (special series)" | "UN 20-series" | "UNS" | "ISO metric" | "NPT";
  readonly source: string;
}

const UNIFIED = "ASME B1.1 (from memory)";
const METRIC = "ISO 261, ISO 965-1 (from memory)";
const PIPE = "ASME B1.20.1 (from memory)";

const rows: readonly (readonly [name: string, series: StandardThread["series"], source: string])[] = [
  ["5/16-28", "UN (special series)", UNIFIED],
  ["5/16-24", "UNF", UNIFIED],
  ["M8x1", "ISO metric", METRIC],
  ["3/8-24", "UNF", UNIFIED],
  ["3/8-20", "UN 20-series", UNIFIED],
  ["M10x1", "ISO metric", METRIC],
  ["M10x1.25", "ISO metric", METRIC],
  ["1/8-27 NPT", "NPT", PIPE],
  ["M11x1.5", "ISO metric", METRIC],
  ["7/16-24", "UNS", UNIFIED],
  ["7/16-20", "UNF", UNIFIED],
  ["M12x1", "ISO metric", METRIC],
  ["M12x1.25", "ISO metric", METRIC],
  ["M12x1.5", "ISO metric", METRIC],
  ["1/2-20", "UNF", UNIFIED],
  ["1/2-24", "UNS", UNIFIED],
  ["M13x1.5", "ISO metric", METRIC],
  ["M14x1.5", "ISO metric", METRIC],
  ["9/16-18", "UNF", UNIFIED],
  ["9/16-20", "UN 20-series", UNIFIED],
  ["5/8-18", "UNF", UNIFIED],
  ["M16x1.5", "ISO metric", METRIC],
  ["11/16-18", "UNS", UNIFIED],
  ["3/4-18", "UNS", UNIFIED],
];

/** Reads a name of this product's own data; a name that is no thread is our mistake. */
export function standardThread(name: string): Thread {
  const thread = threadNamed(name);
  if (!thread) throw new Error(`standard data names no thread: ${name}`);
  return thread;
}

export const standardThreads: readonly StandardThread[] = rows.map(([name, series, source]) => ({ thread: standardThread(name), series, source }));
