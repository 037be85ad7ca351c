/** What a quote still needs before its lines can have a total: what is not settled is not among the lines, so that their sum is too small. */
import { sayPort } from "./assembly";
import { groupBy } from "./group-by";
import { madeUpRuns } from "./kits";
import type { CarReport } from "./report";
import type { Run } from "./runs";
import { sayTube } from "./tube";

/** In the words of a list: "a length for runs 3, 4", "a nut for run 2 at BLK LF". */
export function missingForQuote(report: CarReport): string[] {
  const { runs, kit, findings } = report;
  if (runs.length === 0) return ["the runs of this car"];
  const choice = findings.some(({ code, standing }) => code === "kit-ambiguous" && standing === "open") ? [`the choice between ${kit.possible.map(({ name }) => name).join(" and ")}`] : [];
  const madeUp = madeUpRuns(report);
  const wanted = madeUp.flatMap((run) => wantedFor(run).map((what) => ({ run, what })));
  return [...choice, ...[...groupBy(wanted, ({ what }) => what)].map(([what, of]) => `${what} for ${sayRuns(of.map(({ run }) => run))}`), ...madeUp.flatMap(nutsWanted)];
}

function wantedFor({ length, tube, material, stock }: Run): string[] {
  const wanted = [...(material === undefined ? ["a material"] : []), ...(tube === undefined ? ["a tube size"] : []), ...(length === undefined ? ["a length"] : [])];
  return tube !== undefined && material !== undefined && !stock ? [...wanted, `${sayTube(tube)} ${material} on the rack`] : wanted;
}

/** Without a tube size no nut can be chosen, and the size is what is asked for. */
const nutsWanted = ({ number, tube, a, b }: Run): string[] =>
  tube === undefined ? [] : [a, b].filter(({ fitting }) => fitting?.fits !== true).map(({ at }) => `a nut for run ${number} at ${sayPort(at)}`);

const sayRuns = (runs: readonly Run[]): string => `${runs.length === 1 ? "run" : "runs"} ${runs.map(({ number }) => number).join(", ")}`;
