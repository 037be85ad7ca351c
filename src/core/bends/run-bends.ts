/** What a line measured by its points needs from the bender: which radius, how much tube, and what cannot be bent. */
import type { Metres } from "../quantity";
import type { Settings } from "../settings";
import type { TubeStock } from "../tube";
import { developedLength } from "./bends";
import { bendsThrough, type ReadLine } from "./read-points";
import type { Vector } from "./vector";

export interface RunBends extends ReadLine {
  readonly radius: Metres;
  /** Tube before bending; undefined when no line can be made of the points. */
  readonly developed: Metres | undefined;
}

/** The shop's own radius, where Settings state one, else the least of the tube; undefined when neither is known. */
export const bendRadiusFor = ({ bendRadius }: Settings, stock: TubeStock | undefined): Metres | undefined => (bendRadius > 0 ? bendRadius : stock?.leastBendRadius);

/**
 * The bends of a run through its points.
 * @param points of the centre line, ends included [m]
 * @param stock whose least radius counts
 */
export function bendRun(points: readonly Vector[], radius: Metres, { settings, stock }: { readonly settings: Settings; readonly stock: TubeStock | undefined }): RunBends {
  const read = bendsThrough(points, radius, { grip: settings.benderGrip, leastRadius: stock?.leastBendRadius });
  return { ...read, radius, developed: read.line && developedLength(read.line) };
}
