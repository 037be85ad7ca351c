/** The cut list for the bench: what to cut, how long, and what goes on each end. Values only. */
import { sayPort } from "../../core/assembly";
import type { Catalogue } from "../../core/catalogue";
import { inInches, inMillimetres, type Metres } from "../../core/quantity";
import type { CarReport } from "../../core/report";
import type { Run, RunEnd } from "../../core/runs";
import { sayTube } from "../../core/tube";
import { allowanceOf } from "../../core/allowance";
import type { CellValue } from "../port";

/** One row a run of each car, longest first within a tube; a run without a length says so. */
export function cutListSheet({ settings }: Catalogue, reports: readonly CarReport[]): CellValue[][] {
  const us = settings.units === "us";
  const shown = (length: Metres): number => Number((us ? inInches(length) : inMillimetres(length)).toFixed(us ? 2 : 0));
  const row = ({ car, run }: { car: string; run: Run }): CellValue[] => [
    run.stock?.name ?? run.material ?? "", run.tube === undefined ? "" : sayTube(run.tube), run.length === undefined ? "no length" : shown((run.length + allowanceOf(settings)) as Metres),
    run.length === undefined ? "" : shown(run.length), run.basis ?? "", car, run.number, sayPort(run.a.at), endWork(run.a), sayPort(run.b.at), endWork(run.b),
  ];
  const runs = reports.flatMap(({ car, runs: of }) => of.map((run) => ({ car: car.name, run })));
  const sorted = [...runs].sort((a, b) => compare(stockKey(a.run), stockKey(b.run)) || (b.run.length ?? 0) - (a.run.length ?? 0));
  const unit = us ? "in" : "mm";
  return [["Stock", "Tube", `Cut (${unit})`, `Net (${unit})`, "Basis", "Car", "Run", "End A", "Nut and flare A", "End B", "Nut and flare B"], ...sorted.map(row)];
}

const endWork = ({ fitting }: RunEnd): string => (fitting?.fits ? [fitting.nut.name, fitting.flare, ...fitting.adapters.map(({ adapter }) => adapter.name)].join(", ") : "not settled");
const stockKey = (run: Run): string => `${run.material ?? "~"}|${run.tube ?? 0}|${run.stock?.name ?? ""}`;
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
