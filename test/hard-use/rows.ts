/** How much the suite is run with: 20,000 rows in `npm test`, a million at night. */
import fc from "fast-check";

export const ROWS = Number(process.env["HARD_USE_ROWS"] ?? 20_000);
if (!Number.isInteger(ROWS) || ROWS < 1) throw new Error(`HARD_USE_ROWS is a whole number of rows (read: ${String(process.env["HARD_USE_ROWS"])}).`);

const seed = Number(process.env["PROPERTY_SEED"] ?? Date.now() % 2 ** 31);

/** Rows are counted as they run, so that the suite cannot claim more than it did. */
export interface Counter {
  rows: number;
}

/**
 * A property held to a share of the rows; its cases go on until that many ran. A failure prints seed and shrunk case; PROPERTY_SEED repeats it.
 * @param holds counts the rows of its case
 */
export function hardUse<T>(says: string, share: number, cases: fc.Arbitrary<T>, holds: (value: T, counter: Counter) => void): void {
  const wanted = Math.ceil(ROWS * share);
  test(`${says} (${String(wanted)} rows)`, async () => {
    const counter: Counter = { rows: 0 };
    for (let round = 0; counter.rows < wanted; round++) {
      const before = counter.rows;
      fc.assert(fc.property(cases, (value) => { holds(value, counter); }), { numRuns: CASES_A_ROUND, seed: seed + round, plugins: [fc.interruptAfterTimeLimit(LONGEST_ROUND)] });
      if (counter.rows === before) throw new Error("The cases held no rows.");
      // The grid's library leaves a promise with each workbook; until it is kept, none of them can be forgotten.
      await new Promise(setImmediate);
    }
  }, 60_000 + ROWS * 20);
}

/** Few, so that the last round does not run far past what was asked for, and that what a round opened can be forgotten before the next. */
const CASES_A_ROUND = 2;

/** A case that fails because it is slow is shrunk no longer than this [ms], and then told as it is. */
const LONGEST_ROUND = 30_000;
