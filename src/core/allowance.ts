/** Tube that a run uses beyond its length. */
import { metres, type Metres } from "./quantity";
import type { Settings } from "./settings";

/** What is sawn for a run: its length with a flare and a trim at each end. */
export const sawnLength = (length: Metres, { flareAllowance, trimAllowance }: Settings): Metres => metres(length + 2 * (flareAllowance + trimAllowance));

/** A flare and a trim at each end, and the saw's own width. */
export const allowanceOf = (settings: Settings): Metres => metres(sawnLength(metres(0), settings) + settings.sawKerf);
