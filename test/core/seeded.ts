/** Properties run with a seed of their own each time; a failure prints it, and PROPERTY_SEED repeats the run. */
import fc from "fast-check";

const seed = Number(process.env["PROPERTY_SEED"] ?? Date.now() % 2 ** 31);

/** A test of one property. fast-check prints seed, path and the shrunk case when it fails. */
export const property = <T>(says: string, runs: number, arbitrary: fc.Arbitrary<T>, holds: (value: T) => void): void =>
  test(`${says} (${runs} random cases)`, () => fc.assert(fc.property(arbitrary, holds), { numRuns: runs, seed, verbose: 1 }), 60_000);
