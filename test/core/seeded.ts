/** Properties run with a seed of their own each time; a failure prints it, and PROPERTY_SEED repeats the run. */
import fc from "fast-check";

export const seed = Number(process.env["PROPERTY_SEED"] ?? Date.now() % 2 ** 31);
/** Where the tests run thousands of times over, PROPERTY_SHARE lets each try a share of its cases only. */
const share = Number(process.env["PROPERTY_SHARE"] ?? 1);

/** A test of one property. fast-check prints seed, path and the shrunk case when it fails. */
export function property<T>(says: string, runs: number, arbitrary: fc.Arbitrary<T>, holds: (value: T) => void): void {
  const numRuns = Math.ceil(runs * share);
  test(`${says} (${numRuns} random cases)`, () => fc.assert(fc.property(arbitrary, holds), { numRuns, seed, verbose: 1 }), 60_000);
}
