/** One catalogue's answers to 'what fits this port?', each searched once: a thousand cars ask the same few dozen. */
import type { Catalogue } from "./catalogue";
import { fitTube, joinFaces, type AdapterStep, type Fitting, type NoFitting } from "./fittings";
import { faceKey, type JointFace } from "./joint";
import { madeOnce, madeOnceByKey } from "./made-once";
import type { Metres } from "./quantity";
import { tubeKey } from "./tube";

export interface Fitter {
  /** The nut, or adapters and nut, between a tube and a port. */
  readonly fit: (tube: Metres, port: JointFace) => Fitting | NoFitting;
  /** True when a nut alone joins the tube to the port. */
  readonly takesNut: (tube: Metres, port: JointFace) => boolean;
  /** The cheapest chain of adapters between two faces; undefined when there is none. */
  readonly chain: (from: JointFace, to: JointFace) => readonly AdapterStep[] | undefined;
}

export const fitterFor: (catalogue: Catalogue) => Fitter = madeOnce(({ nuts, adapters, settings }) => ({
  fit: remembering(tubeAndPort, (tube, port) => fitTube({ nuts, adapters, jointCost: settings.jointCost }, tube, port)),
  takesNut: remembering(tubeAndPort, (tube, port) => fitTube({ nuts, adapters: [], jointCost: 0 }, tube, port).fits),
  chain: remembering(twoFaces, (from, to) => joinFaces({ nuts, adapters, jointCost: settings.jointCost }, from, to)),
}));

const tubeAndPort = (tube: Metres, port: JointFace): string => `${tubeKey(tube)}|${faceKey(port)}`;
const twoFaces = (from: JointFace, to: JointFace): string => `${faceKey(from)}|${faceKey(to)}`;

function remembering<A, B, T>(keyOf: (a: A, b: B) => string, search: (a: A, b: B) => T): (a: A, b: B) => T {
  const answers = madeOnceByKey<T>();
  return (a, b) => answers(keyOf(a, b), () => search(a, b));
}
