/** What fastens lines to the car and guards them: clips by spacing, armour by place. Quantities only; neither is in the price of the lines. */
import { placeKey } from "./assembly";
import { groupBy } from "./group-by";
import { metres, type Metres } from "./quantity";
import type { Run } from "./runs";
import type { Settings } from "./settings";
import { tubeKey } from "./tube";

export interface FittingOut {
  readonly tube: Metres;
  readonly clips: number;
  readonly armour: Metres;
}

/** By size of tube, in the order of the runs; runs without a length or a tube are not in it. */
export function fittingOut(runs: readonly Run[], settings: Settings): FittingOut[] {
  const guarded = new Set(settings.armouredPlaces.split(";").map(placeKey));
  const known = runs.flatMap(({ tube, length, joint }) => (tube === undefined || length === undefined ? [] : [{ tube, length, joint }]));
  return [...groupBy(known, ({ tube }) => String(tubeKey(tube))).values()].map((group) => ({
    tube: (group[0] as (typeof group)[0]).tube,
    clips: group.reduce((sum, { length }) => sum + clipsFor(length, settings.clipSpacing), 0),
    armour: metres(group.reduce((sum, { length, joint }) => sum + (isGuarded(joint, guarded) ? length : 0), 0)),
  }));
}

/**
 * Clips that leave no length above the spacing between an end and a clip or two clips; the ends hold by their fittings.
 * @returns none for a spacing of 0
 */
export const clipsFor = (length: Metres, spacing: Metres): number => (spacing > 0 ? Math.max(0, Math.ceil(length / spacing - 1e-9) - 1) : 0);

const isGuarded = ({ from, to }: Run["joint"], guarded: ReadonlySet<string>): boolean =>
  [from.instance.outletPlace ?? from.instance.place, to.instance.place].some((place) => place !== undefined && guarded.has(placeKey(place)));
