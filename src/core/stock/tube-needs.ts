/** The tube that open quotes will need: each car's runs, read off the same report as its quote. */
import { nameKey } from "../catalogue";
import type { PieceToCut } from "../cutplan/cut-plan";
import { groupBy } from "../group-by";
import type { Metres } from "../quantity";
import type { CarReport } from "../report";
import type { Run } from "../runs";
import type { OpenQuote } from "../stock-history";
import { allowanceOf, sawnLength } from "../allowance";
import type { Settings } from "../settings";
import type { TubeStock } from "../tube";
import { spreadOf, type DateSpread } from "./date-spread";
import type { QuoteNeed } from "./pipeline";

export interface TubeNeed extends QuoteNeed {
  readonly quote: string;
  /** Name of the rack's tube. */
  readonly tube: string;
  /** What is cut from it, in all the quote's cars. */
  readonly pieces: readonly PieceToCut[];
}

export interface QuoteRemark {
  readonly quote: string;
  readonly says: string;
}

export interface PipelineNeeds {
  /** In metres of tube to cut. */
  readonly needs: readonly TubeNeed[];
  /** Quotes that could not be counted, in whole or in part. */
  readonly problems: readonly QuoteRemark[];
  readonly assumed: readonly QuoteRemark[];
}

/**
 * @param quotes chance [-], dates [day], number of cars [-]
 * @param reports by `nameKey` of the car; lengths in metres [m]
 * @param settings allowances [m]
 * @returns needs by quote and tube [m], and what was left out or taken for granted
 * @source a run's cut length: its length with a flare and a trim at each end and the saw's width, as tubing.ts totals it
 */
export function tubeNeeds(quotes: readonly OpenQuote[], reports: ReadonlyMap<string, CarReport>, settings: Settings): PipelineNeeds {
  const all = quotes.map((quote) => needsOf(quote, reports.get(nameKey(quote.car)), settings));
  return { needs: all.flatMap(({ needs }) => needs), problems: all.flatMap(({ problems }) => problems), assumed: all.flatMap(({ assumed }) => assumed) };
}

function needsOf(quote: OpenQuote, report: CarReport | undefined, settings: Settings): PipelineNeeds {
  const remark = (says: string): QuoteRemark => ({ quote: quote.quote, says });
  const dates = spreadOf(quote);
  if (!report) return { needs: [], problems: [remark(`no row of the cars is named ${quote.car}`)], assumed: [] };
  if (!dates) return { needs: [], problems: [remark("none of its dates is given, so it falls in no week")], assumed: [] };
  const cut = groupBy(report.runs.filter(isCounted), ({ stock }) => stock.name);
  const leftOut = report.runs.filter((run) => !isCounted(run)).length;
  const assumed = [...dates.assumed, ...(quote.quantity === undefined ? ["Quantity is blank and taken as 1"] : [])];
  return {
    needs: [...cut].map(([tube, runs]) => need(quote, dates.spread, { tube, runs, settings })),
    problems: [...(report.runs.length === 0 ? [remark(`${quote.car} has no runs yet`)] : []), ...(leftOut > 0 ? [remark(`${leftOut} of ${report.runs.length} runs of ${quote.car} ${leftOut === 1 ? "has no tube of the rack or no length and is" : "have no tube of the rack or no length and are"} left out`)] : [])],
    assumed: assumed.map(remark),
  };
}

interface RunsOfTube {
  readonly tube: string;
  readonly runs: readonly CountedRun[];
  readonly settings: Settings;
}

/** Saw cuts are in the quantity and not in the pieces, as a cut plan sees to them itself. */
function need({ quote, car, chance, quantity = 1 }: OpenQuote, spread: DateSpread, { tube, runs, settings }: RunsOfTube): TubeNeed {
  const allowance = allowanceOf(settings);
  const length = runs.reduce((sum, run) => sum + run.length + allowance, 0);
  const pieces = runs.map((run): PieceToCut => ({ name: `${quote} ${car}, run ${run.number}`, length: sawnLength(run.length, settings), count: quantity }));
  return { quote, tube, chance, spread, quantity: quantity * length, pieces };
}

/** A run that is cut from a tube of the rack. */
type CountedRun = Run & { readonly stock: TubeStock; readonly length: Metres };
const isCounted = (run: Run): run is CountedRun => run.stock !== undefined && run.length !== undefined;
