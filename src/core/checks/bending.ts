/** Rules about lines measured by their points: whether the bender can make them, and the tube stands it. */
import { sayJoint } from "../assembly";
import type { BendCode, BendFinding } from "../bends/read-points";
import { finding, type Finding, type FindingCode } from "../finding";
import { groupBy } from "../group-by";
import type { Run } from "../runs";
import { sayLength } from "../say-quantity";
import type { Rule } from "./rule";

/** The radius is a matter of the die and the tube, not of one line: it has a rule of its own. */
const CODE_OF: Readonly<Record<Exclude<BendCode, "radius-below-least">, FindingCode>> = {
  "points-too-few": "bend-impossible", "point-not-a-number": "bend-impossible", "point-too-far": "bend-impossible", "leg-turns-back": "bend-impossible", "straight-negative": "bend-impossible",
  "straight-below-grip": "straight-below-grip", "legs-in-line": "point-without-bend", "point-twice": "point-without-bend",
};

/** One finding a run and code, naming the points as Lengths has them. */
export const bendsThatCannotBeMade: Rule = ({ runs }) => runs.flatMap((run) => {
  const coded = (run.bends?.findings ?? []).flatMap((one) => (one.code === "radius-below-least" ? [] : [{ one, code: CODE_OF[one.code] }]));
  return [...groupBy(coded, ({ code }) => code).values()].map((found) => bendFinding(run, (found[0] as (typeof found)[0]).code, found.map(({ one }) => one)));
});

function bendFinding(run: Run, code: FindingCode, found: readonly BendFinding[]): Finding {
  const points = [...new Set(found.map(({ point }) => point))].join(", ");
  const place = `run ${run.number}, ${sayJoint(run.joint)}: point ${points}`;
  return finding(code, { place, seen: `${place}: ${[...new Set(found.map(({ says }) => says))].join("; ")}` });
}

/** One finding a tube: all its bends are made on one die. */
export const bendsTooTight: Rule = ({ runs, catalogue: { settings } }) => {
  const tight = runs.filter(({ bends }) => bends?.findings.some(({ code }) => code === "radius-below-least"));
  return [...groupBy(tight, ({ stock }) => stock?.name ?? "")].map(([name, of]) => {
    const [{ stock, bends }] = of as [Run];
    const numbers = of.map(({ number }) => number).join(", ");
    const [made, least] = [bends?.radius, stock?.leastBendRadius].map((radius) => (radius === undefined ? "?" : sayLength(settings, radius)));
    return finding("bend-below-least-radius", { place: `${name}, runs ${numbers}`, seen: `bends of ${made} on ${of.length === 1 ? "run" : "runs"} ${numbers}, and ${name} takes no less than ${least}` });
  });
};
