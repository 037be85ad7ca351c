/** Ranges too large for one answer, asked for in parts: Excel on the web answers with at most 5 MB. */
import { codeOf } from "./run";

/** The second code is of a range with more cells than the host gives at once. */
export const isTooLarge = (error: unknown): boolean => ["ResponsePayloadSizeLimitExceeded", "RangeExceedsLimit"].includes(codeOf(error));

/** What is wanted of a range: what to load, and its rows once that is there. */
export interface WantedRows<T> {
  readonly load: string;
  readonly of: (part: Excel.Range) => readonly T[];
}

export interface Rows {
  readonly first: number;
  readonly count: number;
}

/**
 * Some rows of a range, halved until each part fits into an answer.
 * @throws the host's error when a single row does not fit
 */
export async function rowsInParts<T>(context: Excel.RequestContext, range: Excel.Range, { first, count }: Rows, wanted: WantedRows<T>): Promise<readonly T[]> {
  if (count <= 0) return [];
  const part = range.getRow(first).getResizedRange(count - 1, 0).load(wanted.load);
  try {
    await context.sync();
    return wanted.of(part);
  } catch (error) {
    if (!isTooLarge(error) || count === 1) throw error;
  }
  return halves(count, (from, size) => rowsInParts(context, range, { first: first + from, count: size }, wanted));
}

/** Both halves of so many things, one after the other. */
export async function halves<T>(count: number, read: (first: number, count: number) => Promise<readonly T[]>): Promise<readonly T[]> {
  const half = Math.ceil(count / 2);
  return [...(await read(0, half)), ...(await read(half, count - half))];
}
