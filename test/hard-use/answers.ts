/** What every answer of a worksheet function must be, whatever it was given. */
import { SheetError } from "../../src/functions/answer";
import { worksheetFunctions } from "../../src/functions/registry";
import type { HostileCell } from "./hostile-cells";

export type AnswerCell = string | number | boolean;
/** Rows, or the sentence of a #VALUE! or #N/A. */
export type Answer = { readonly rows: readonly (readonly AnswerCell[])[] } | { readonly refused: string };

/** Time that one call may take [ms]. */
const LONGEST_CALL = 1000;

/** The shorter of the times by the clock and by the processor: the clock also counts what other programs do, the processor other threads. */
export function timed<T>(work: () => T): { readonly value: T; readonly milliseconds: number } {
  const [processor, clock] = [process.cpuUsage(), performance.now()];
  const value = work();
  return { value, milliseconds: Math.min(process.cpuUsage(processor).user / 1000, performance.now() - clock) };
}

/**
 * Calls a function and holds it to its promises: it answers a table without gaps, or refuses with a sentence, within a second.
 * @param given texts that stood in the arguments, which an answer may quote
 * @throws Error that names the promise broken
 */
export function ask(name: string, args: readonly unknown[], given: () => Iterable<unknown> = () => []): Answer {
  const { value: answer, milliseconds } = timed(() => answerOf(name, args));
  if (milliseconds > LONGEST_CALL) throw new Error(`${name} took ${(milliseconds / 1000).toFixed(2)} s.`);
  if ("refused" in answer) expectSentence(name, answer.refused);
  else expectTable(name, answer.rows, given);
  return answer;
}

function answerOf(name: string, args: readonly unknown[]): Answer {
  try {
    const value = (worksheetFunctions[name] as (...values: readonly unknown[]) => unknown)(...args);
    return { rows: (Array.isArray(value) ? value : [[value]]) as AnswerCell[][] };
  } catch (error) {
    if (error instanceof SheetError) return { refused: error.message };
    throw new Error(`${name} threw ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`, { cause: error });
  }
}

function expectSentence(name: string, message: string): void {
  if (!/\w/.test(message)) throw new Error(`${name} refused without a word.`);
}

function expectTable(name: string, rows: Extract<Answer, { rows: unknown }>["rows"], given: () => Iterable<unknown>): void {
  const [headings] = rows;
  if (!headings || headings.length === 0) throw new Error(`${name} answered nothing.`);
  let quotable: readonly string[] | undefined;
  for (const row of rows) {
    if (row.length !== headings.length) throw new Error(`${name}: a row of ${row.length} cells under ${headings.length} headings: ${JSON.stringify(row)}`);
    for (const [index, cell] of row.entries()) {
      if (isFigure(cell) || isPlainText(cell)) continue;
      quotable ??= quotableTexts(given());
      if (typeof cell !== "string" || hasNoFigure(quotable.reduce((text, quoted) => text.replaceAll(quoted, ""), cell))) {
        throw new Error(`${name}: ${typeof cell} ${String(cell)} under ${String(headings[index])} in ${JSON.stringify(row)}`);
      }
    }
  }
}

const isFigure = (cell: unknown): boolean => typeof cell === "boolean" || (typeof cell === "number" && Number.isFinite(cell));
const hasNoFigure = (text: string): boolean => /NaN|Infinity|∞|undefined|\bnull\b|\[object/.test(text);
const isPlainText = (cell: unknown): boolean => typeof cell === "string" && !hasNoFigure(cell);

/** Texts of the arguments that themselves look like no figure, as an answer may quote them: cut off at the ends, the longest first. */
function quotableTexts(given: Iterable<unknown>): readonly string[] {
  const texts = new Set<string>();
  for (const cell of given) {
    const text = String(cell).trim();
    if (hasNoFigure(text)) for (const quoted of [text, ...text.split(/[;,@:|]/).map((part) => part.trim())]) if (quoted !== "") texts.add(quoted);
  }
  return [...texts].sort((a, b) => b.length - a.length);
}

export const cellsOf = (rows: readonly (readonly HostileCell[])[]): readonly HostileCell[] => rows.flat();
