/** Threads, nuts and adapters, asked for directly: reads the arguments, calls the core once, lays out the answer. */
import { standardNuts } from "../catalogue/standard/nuts";
import { standardThreads } from "../catalogue/standard/threads";
import { fitTube, joinFaces, type AdapterStep, type Fitting, type FittingStock, type NoFitting } from "../core/fittings";
import { sayFace, type JointFace } from "../core/joint";
import { inches, inInches, inMillimetres, millimetres, type Metres } from "../core/quantity";
import { defaultSettings } from "../core/settings";
import { threadProbabilities } from "../core/reading-likelihood";
import { readThread, type ThreadCandidate } from "../core/thread-reading";
import { sayTube } from "../core/tube";
import type { CellValue } from "../workbook/document";
import { notAvailable } from "./answer";
import { readFace, readGender, readLength, readNumber, readTube, readUnit } from "./arguments";
import { laidOut, length, rounded, text, type Column } from "./columns";
import { catalogueFor } from "./reports";

export interface ThreadArguments {
  readonly diameter: unknown;
  readonly pitch: unknown;
  readonly unit: unknown;
  readonly gender: unknown;
}

/** Candidates for a reading, nearest first. */
export function threadTable({ diameter, pitch, unit, gender }: ThreadArguments): CellValue[][] {
  const us = readUnit(unit) === "in";
  const limits = { diameter: defaultSettings.nearMissDiameter, pitchShare: defaultSettings.nearMissPitchShare };
  const reading = { diameter: readLength("diameter", diameter, us ? "in" : "mm"), pitch: readPitch(pitch, us), gender: readGender("gender", gender, "male") };
  const candidates = readThread(listedThreads, reading, limits);
  if (candidates.length === 0) throw notAvailable(`No listed thread is near ${String(diameter)} ${us ? "in" : "mm"}${reading.pitch === undefined ? "" : ` with ${String(pitch)} ${us ? "threads per inch" : "mm pitch"}`}.`);
  const probabilities = threadProbabilities(listedThreads, reading.gender, reading, { diameter: defaultSettings.diameterSpread, pitch: defaultSettings.pitchSpread });
  return laidOut(threadColumns(us), candidates.map((one) => ({ ...one, probability: probabilities[listedThreads.indexOf(one.thread)] ?? 0 })), us ? "us" : "metric");
}

const listedThreads = standardThreads.map(({ thread }) => thread);

export interface ProbableThread extends ThreadCandidate {
  /** Among the listed threads, all alike beforehand. */
  readonly probability: number;
}

/** Inch readings count threads per inch, metric ones measure the pitch. */
function readPitch(pitch: unknown, us: boolean): Metres | undefined {
  const value = readNumber("pitch", pitch);
  if (value === undefined) return undefined;
  return us ? inches(1 / value) : millimetres(value);
}

export const threadColumns = (us: boolean): Column<ProbableThread>[] => [
  text("Thread", ({ thread }) => thread.name),
  text("Series", (row) => listed(row)?.series),
  length("Least", ({ window }) => window.least),
  length("Most", ({ window }) => window.most),
  length("Diameter off", ({ diameterOff }) => diameterOff),
  text(us ? "Threads per inch" : "Pitch (mm)", ({ thread }) => rounded(us ? 1 / inInches(thread.pitch) : inMillimetres(thread.pitch), 3)),
  text("Pitch off (%)", ({ pitchOff }) => (pitchOff === undefined ? undefined : rounded(pitchOff * 100, 1))),
  text("Match", ({ match }) => match),
  text("Mistaken for", ({ mistakenFor }) => mistakenFor.join("; ")),
  text("Source", (row) => listed(row)?.source),
  text("Probability", ({ probability }) => rounded(probability, 4)),
];

const listed = ({ thread }: ThreadCandidate) => standardThreads.find((one) => one.thread.name === thread.name);

const stockOf = (catalog: unknown): FittingStock => {
  if (isBlank(catalog)) return { nuts: standardNuts, adapters: [], jointCost: defaultSettings.jointCost };
  const { nuts, adapters, settings } = catalogueFor(catalog);
  return { nuts, adapters, jointCost: settings.jointCost };
};

const isBlank = (value: unknown): boolean => value === undefined || value === null || value === "" || value === 0;
const unitsOf = (catalog: unknown) => (isBlank(catalog) ? defaultSettings.units : catalogueFor(catalog).settings.units);

export interface FittingArguments {
  readonly tube: unknown;
  readonly thread: unknown;
  readonly seat: unknown;
  readonly catalog: unknown;
  readonly gender: unknown;
}

/** The nut, or adapters and nut, between a tube and a port. */
export function fittingTable({ tube, thread, seat, catalog, gender }: FittingArguments): CellValue[][] {
  const size = readTube(tube);
  const port = readFace({ thread, seat, gender: readGender("gender", gender, "female") });
  return laidOut(fittingColumns, [{ size, port, fitting: fitTube(stockOf(catalog), size, port) }], unitsOf(catalog));
}

export interface Fitted {
  readonly size: Metres;
  readonly port: JointFace;
  readonly fitting: Fitting | NoFitting;
}

const whenFits = <T>(read: (fitting: Fitting) => T) => ({ fitting }: Fitted): T | undefined => (fitting.fits ? read(fitting) : undefined);

export const fittingColumns: readonly Column<Fitted>[] = [
  text("Nut", whenFits(({ nut }) => nut.name)),
  length("Tube", ({ size }) => size),
  text("Thread", whenFits(({ nut }) => nut.face.thread.name)),
  text("Seat", whenFits(({ nut }) => nut.face.seat)),
  text("Flare", whenFits(({ flare }) => flare)),
  text("Adapters", whenFits(({ adapters }) => adapters.map(({ adapter }) => adapter.name).join("; "))),
  text("Price", whenFits(({ price }) => price)),
  text("Problem", ({ size, port, fitting }) => (fitting.fits ? "" : `${sayTube(size)} tube cannot be joined to ${sayFace(port)}: the ${fitting.reason} does not fit`)),
];

export interface AdaptArguments {
  readonly from: { readonly thread: unknown; readonly seat: unknown; readonly gender: unknown };
  readonly to: { readonly thread: unknown; readonly seat: unknown; readonly gender: unknown };
  readonly catalog: unknown;
}

/** Pairings tried where a gender is left out: a line's nut into a port first, then the other ways round. */
const PAIRINGS = [["male", "female"], ["female", "male"], ["female", "female"], ["male", "male"]] as const;

/** The cheapest chain of adapters between two faces, one row an adapter. */
export function adaptTable({ from, to, catalog }: AdaptArguments): CellValue[][] {
  const stock = stockOf(catalog);
  const pairings = PAIRINGS.filter(([a, b]) => (isBlank(from.gender) || readGender("from gender", from.gender, a) === a) && (isBlank(to.gender) || readGender("to gender", to.gender, b) === b));
  const tried = pairings.map(([a, b]) => ({ a: readFace({ ...from, gender: a }), b: readFace({ ...to, gender: b }) }));
  for (const { a, b } of tried) {
    const steps = joinFaces(stock, a, b);
    if (steps) return laidOut(adaptColumns, steps.length === 0 ? [{ number: 0, says: `${sayFace(a)} joins ${sayFace(b)} as it is` }] : steps.map((step, index) => ({ number: index + 1, step })), "us");
  }
  const [first] = tried as [(typeof tried)[number]];
  return laidOut(adaptColumns, [{ number: "", says: `no listed adapters join ${sayFace(first.a)} to ${sayFace(first.b)}` }], "us");
}

export interface AdaptRow {
  readonly number: number | "";
  readonly step?: AdapterStep;
  readonly says?: string;
}

const ofStep = <T>(read: (step: AdapterStep) => T) => ({ step }: AdaptRow): T | undefined => step && read(step);

export const adaptColumns: readonly Column<AdaptRow>[] = [
  text("Step", ({ number }) => number),
  text("Adapter", ofStep(({ adapter }) => adapter.name)),
  text("Thread A", ofStep(({ joins }) => joins.thread.name)),
  text("Seat A", ofStep(({ joins }) => joins.seat)),
  text("Gender A", ofStep(({ joins }) => joins.gender)),
  text("Thread B", ofStep(({ offers }) => offers.thread.name)),
  text("Seat B", ofStep(({ offers }) => offers.seat)),
  text("Gender B", ofStep(({ offers }) => offers.gender)),
  text("Price", ofStep(({ adapter }) => adapter.price)),
  text("Problem", ({ step, says }) => (step ? "" : says)),
];
