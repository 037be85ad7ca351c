/** Whether the tube stands the pressure of the hardest stop, with the safety factor of Settings. */
import { lockOf } from "../balance/braking";
import { judge } from "../balance/judgement";
import { vonMisesPressure } from "../burst";
import { finding } from "../finding";
import { groupBy } from "../group-by";
import { pascals, type Pascals } from "../quantity";
import type { Run } from "../runs";
import { sayFigure, sayPressure } from "../say-quantity";
import { sayTube } from "../tube";
import type { CarFacts, Rule } from "./rule";

/** Silent without a yield strength of the stock, or without the figures of the balance. */
export const burstMargin: Rule = (facts) => {
  const working = workingPressure(facts);
  const { settings } = facts.catalogue;
  if (working === undefined) return [];
  const strong = (run: Run): boolean => pressureLimit(run) === undefined || (pressureLimit(run) ?? 0) >= working * settings.burstSafetyFactor;
  const weak = facts.runs.filter((run) => !strong(run));
  return [...groupBy(weak, ({ stock }) => stock?.name ?? "")].map(([name, runs]) => {
    const limit = pressureLimit(runs[0] as Run) ?? pascals(0);
    const seen = `${runs[0]?.tube === undefined ? name : `${sayTube(runs[0].tube)} ${name}`} yields at ${sayPressure(settings, limit)}, ${sayFigure(limit / working)} times the ${sayPressure(settings, working)} at which the fronts lock on a good road, and ${sayFigure(settings.burstSafetyFactor)} is asked`;
    return finding("burst-margin", { place: `${name}, runs ${runs.map(({ number }) => number).join(", ")}`, seen });
  });
};

const pressureLimit = ({ stock }: Run): Pascals | undefined => (stock?.yieldStrength === undefined ? undefined : vonMisesPressure(stock.yieldStrength, stock));

/** The most pressure a driver needs: the fronts lock on the highest adhesion, under the load that takes most. */
function workingPressure(facts: CarFacts): Pascals | undefined {
  const locks = judge(facts).under.flatMap(({ braking }) => lockOf(braking, "front", facts.catalogue.settings.highestAdhesion)?.pressure ?? []);
  return locks.length === 0 ? undefined : (Math.max(...locks) as Pascals);
}
