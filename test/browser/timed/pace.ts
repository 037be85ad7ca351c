/** How fast the machine is, so that a limit of time means the same work on a slow one. */
import type { Page } from "playwright-core";

/** A fixed piece of work, in the page [ms]. */
export function fixedWork(): number {
  const start = performance.now();
  for (let step = 0, sum = 0; step < 500_000; step++) sum += Math.sqrt(step + sum);
  return performance.now() - start;
}

/** What the fixed work takes on the machine that the limits are set on, two shared cores of a server [ms]. */
const USUAL_WORK = 4.5;

/**
 * Limits stand as they are on a machine like the usual one and on any faster; on a slower one they grow as its fixed work does.
 * @returns 1, or how many times as long as usual the fixed work takes at the least of twenty times
 */
export async function slowness(page: Page): Promise<number> {
  const times: number[] = [];
  for (let turn = 0; turn < 20; turn++) times.push(await page.evaluate(fixedWork));
  const slow = Math.max(1, Math.min(...times) / USUAL_WORK);
  if (slow > 1) console.log(`This machine takes ${slow.toFixed(2)} times as long as usual over fixed work; limits of time grow as much.`);
  return slow;
}
