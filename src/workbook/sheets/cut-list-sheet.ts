/** The cut list for the bench: what to take from the rack, where to saw it, and what goes on each end. Boxes to tick; values only. */
import { sayPort } from "../../core/assembly";
import type { BenchCut, BenchJob, BenchPlan, BenchStick } from "../../core/bench-plan";
import { groupBy } from "../../core/group-by";
import { inInches, inMillimetres } from "../../core/quantity";
import type { Run, RunEnd } from "../../core/runs";
import { sayOnTape } from "../../core/say-quantity";
import type { Settings } from "../../core/settings";
import { sayTube } from "../../core/tube";
import type { CellStyle } from "../document";
import type { SheetContent } from "../port";
import { sheetDraft, type SheetDraft } from "./sheet-draft";
import { addShopHead } from "./shop-head";
import { BANNER, HEADING, REASON, RIGHT, RULE, SMALL, STRONG, TEXT } from "./sheet-looks";

export interface CutListHead {
  /** As it prints. */
  readonly date: string;
  /** Whose tube is sawn: "Car 3", or "12 cars". */
  readonly cars: string;
}

export interface CutList {
  readonly plans: readonly BenchPlan[];
  /** Runs that cannot be sawn yet. */
  readonly leftOut: readonly { readonly car: string; readonly run: Run }[];
  /** Runs that come bent, in a set. */
  readonly preBent: number;
  /** Cars with an open stop: sawn tube may be waste. */
  readonly held: readonly string[];
}

/** A narrow column parts the lengths from the car. */
const HEADINGS = ["", "Cut to", "Mark at", "Finished", "", "Car", "Run", "End A", "Nut and flare A", "End B", "Nut and flare B"];
const WIDTHS = [4, 12, 12, 13, 2, 12, 5, 19, 35, 19, 35];
const WIDTH = WIDTHS.length;
const ALL = [0, WIDTH] as const;
const BESIDE = [1, WIDTH - 1] as const;
const BOX = "☐";

/** What to take, then every stick with its cuts in sawing order, each with its box; what is not cut comes last. */
export function cutListSheet(settings: Settings, list: CutList, { date, cars }: CutListHead): SheetContent {
  const draft = sheetDraft(WIDTHS);
  addShopHead(draft, settings, { title: "Cut list", left: [["For", cars], ["Date", date]], right: [] }, { left: 2, label: 9, fact: 10, columns: WIDTH });
  addHeld(draft, list.held);
  addTaking(draft, settings, list.plans);
  for (const plan of list.plans) addJob(draft, settings, plan);
  addLeftOut(draft, list);
  addNotes(draft, settings, list.plans);
  return draft.content({ landscape: true, fitWide: true, footer: `Cut list, ${cars}, ${date}` });
}

const allLooks = (style: CellStyle): CellStyle[] => Array.from({ length: WIDTH }, () => style);

function addHeld(draft: SheetDraft, held: readonly string[]): void {
  if (held.length === 0) return;
  draft.row([]);
  draft.row([`HOLD: do not saw for ${held.length === 1 ? "this car" : "these cars"} yet`], BANNER, [ALL]);
  draft.row(["", `A stop is open on ${held.join(", ")}. What is sawn now may be waste.`], REASON, [BESIDE]);
}

/** One line a stock of the rack. */
function addTaking(draft: SheetDraft, settings: Settings, plans: readonly BenchPlan[]): void {
  draft.row([]);
  draft.row(["Take from the rack"], allLooks(HEADING));
  for (const { sticks, job } of plans) {
    for (const of of groupBy(sticks, ({ stock }) => stock.name).values()) {
      const [{ stock }] = of as [BenchStick];
      draft.row([BOX, `${of.length} × ${stock.name}`, "", "", "", `${sayOnTape(settings, stock.length)}${of.length === 1 ? "" : " each"}: ${sayJob(job)}`], [undefined, STRONG]);
    }
  }
  if (plans.length === 0) draft.row(["", "Nothing: no run is to be sawn."]);
}

/** A wall is told in inches and in millimetres: one of the two is on the tube. */
const sayJob = ({ material, outsideDiameter, wall }: BenchJob): string => `${sayTube(outsideDiameter)} ${material}, wall ${inInches(wall).toFixed(3)} in (${inMillimetres(wall).toFixed(2)} mm)`;

function addJob(draft: SheetDraft, settings: Settings, plan: BenchPlan): void {
  draft.row([]);
  draft.row([sayJob(plan.job)], { bold: true, size: 14 });
  draft.row(HEADINGS, HEADINGS.map((_, column) => (column >= 1 && column <= 3 ? { ...HEADING, align: "right" } : HEADING)));
  plan.sticks.forEach((stick, index) => { addStick(draft, settings, { stick, place: `${index + 1} of ${plan.sticks.length}`, job: plan.job }); });
  for (const { item, says } of plan.plan.problems) draft.row(["!", `${item}: ${says}.`], [{ ...STRONG, ...TEXT }, { ...STRONG, ...TEXT }], [BESIDE]);
}

interface PlacedStick {
  readonly stick: BenchStick;
  readonly place: string;
  readonly job: BenchJob;
}

function addStick(draft: SheetDraft, settings: Settings, { stick: { stock, cuts, left }, place, job }: PlacedStick): void {
  draft.row(["", `Length ${place}: ${stock.name}, ${sayOnTape(settings, stock.length)}`], allLooks({ ...STRONG, ...RULE }));
  for (const cut of cuts) addCut(draft, settings, cut);
  const over = left < job.kerf ? "Nothing left over" : `Left over: ${sayOnTape(settings, left)} of ${sayTube(job.outsideDiameter)} ${job.material}`;
  draft.row(["", over, "", "", "", "", "", left < job.kerf ? "" : `${BOX} kept as an offcut     ${BOX} scrap`], [undefined, { italic: true }]);
}

function addCut(draft: SheetDraft, settings: Settings, { piece: { car, run, length }, to }: BenchCut): void {
  const estimated = run.basis === "estimated";
  const finished = run.length === undefined ? "" : `${estimated ? "≈ " : ""}${sayOnTape(settings, run.length)}`;
  draft.row(
    [BOX, sayOnTape(settings, length), sayOnTape(settings, to), finished, "", car, run.number, sayPort(run.a.at), endWork(run.a), sayPort(run.b.at), endWork(run.b)],
    [TEXT, { ...RIGHT, ...STRONG }, RIGHT, { ...RIGHT, italic: estimated }, undefined, TEXT, { ...TEXT, align: "left" }, TEXT, TEXT, TEXT, TEXT]);
}

const endWork = ({ fitting }: RunEnd): string => (fitting?.fits ? [fitting.nut.name, fitting.flare, ...fitting.adapters.map(({ adapter }) => adapter.name)].join(", ") : "not settled");

function addLeftOut(draft: SheetDraft, { leftOut, preBent }: CutList): void {
  if (leftOut.length === 0 && preBent === 0) return;
  draft.row([]);
  draft.row(["Not on this list"], allLooks(HEADING));
  for (const [car, runs] of groupBy(leftOut, ({ car: name }) => name)) draft.row(["", `${car}, ${runs.length === 1 ? "run" : "runs"} ${runs.map(({ run }) => run.number).join(", ")}: length, size or tube on the rack not known`]);
  if (preBent > 0) draft.row(["", `${preBent} ${preBent === 1 ? "run that comes" : "runs that come"} bent, in a set`]);
}

function addNotes(draft: SheetDraft, settings: Settings, plans: readonly BenchPlan[]): void {
  const { flareAllowance, trimAllowance, sawKerf } = settings;
  const estimated = plans.some(({ sticks }) => sticks.some(({ cuts }) => cuts.some(({ piece }) => piece.run.basis === "estimated")));
  const notes = [
    `Cut to is the finished length with ${sayOnTape(settings, flareAllowance)} for the flare and ${sayOnTape(settings, trimAllowance)} of trim at each end. Mark at is where the piece ends, measured from the first end of the length, each saw cut ${sayOnTape(settings, sawKerf)} wide.`,
    ...(estimated ? ["≈ is an estimated length: hold the tube to the car before it is sawn."] : []),
    "Both nuts go on before the second end is flared.",
  ];
  draft.row([]);
  for (const note of notes) draft.row(["", note], SMALL, [BESIDE]);
}
