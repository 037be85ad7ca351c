/** One catalogue's answers to 'what fits this port?', each searched once: a thousand cars ask the same few dozen. */
import type { Catalogue } from "./catalogue";
import { fitTube, type Fitting, type NoFitting } from "./fittings";
import { faceKey, type JointFace } from "./joint";
import type { Metres } from "./quantity";
import { tubeKey } from "./tube";

export interface Fitter {
  /** The nut, or adapters and nut, between a tube and a port. */
  readonly fit: (tube: Metres, port: JointFace) => Fitting | NoFitting;
  /** True when a nut alone joins the tube to the port. */
  readonly takesNut: (tube: Metres, port: JointFace) => boolean;
}

const fitters = new WeakMap<Catalogue, Fitter>();

export function fitterFor(catalogue: Catalogue): Fitter {
  const known = fitters.get(catalogue);
  if (known) return known;
  const { nuts, adapters, settings } = catalogue;
  const fitter: Fitter = {
    fit: remembering((tube, port) => fitTube({ nuts, adapters, jointCost: settings.jointCost }, tube, port)),
    takesNut: remembering((tube, port) => fitTube({ nuts, adapters: [], jointCost: 0 }, tube, port).fits),
  };
  fitters.set(catalogue, fitter);
  return fitter;
}

function remembering<T>(search: (tube: Metres, port: JointFace) => T): (tube: Metres, port: JointFace) => T {
  const answers = new Map<string, T>();
  return (tube, port) => {
    const key = `${tubeKey(tube)}|${faceKey(port)}`;
    const known = answers.get(key);
    if (known !== undefined) return known;
    const answer = search(tube, port);
    answers.set(key, answer);
    return answer;
  };
}
