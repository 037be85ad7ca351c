/** Which runs of a pre-bent set do which runs of a car, and with which adapters. */
import { placeKey } from "./assembly";
import type { Catalogue, SetRun } from "./catalogue";
import { faceOf, type Port } from "./component";
import { sumPrices, type AdapterStep } from "./fittings";
import { fitterFor } from "./fitter";
import { mates, opposite, usualPortGender } from "./joint";
import type { Run } from "./runs";
import { sameTube } from "./tube";

/** The places that a run of a car lies between. */
export interface RunPlaces {
  readonly run: Run;
  readonly from: string;
  readonly to: string;
}

export const placesOf = (run: Run): RunPlaces => ({
  run, from: placeKey(run.joint.from.instance.outletPlace ?? run.joint.from.instance.place ?? "?"), to: placeKey(run.joint.to.instance.place ?? "?"),
});

/** The cheapest adapters with which a run of a set does a run of the car; undefined when it does not. Either end may come first. */
export function adaptersBetween(catalogue: Catalogue, setRun: SetRun, { run, from: here, to: there }: RunPlaces): readonly AdapterStep[] | undefined {
  const [a, b] = [placeKey(setRun.from), placeKey(setRun.to)];
  const [forward, backward] = [here === a && there === b, here === b && there === a];
  if ((!forward && !backward) || (run.tube !== undefined && setRun.tube !== undefined && !sameTube(run.tube, setRun.tube))) return undefined;
  const { from, to } = run.joint;
  const ways = [
    ...(forward ? bothEnds(endAdapters(catalogue, setRun.a, from.port), endAdapters(catalogue, setRun.b, to.port)) : []),
    ...(backward ? bothEnds(endAdapters(catalogue, setRun.b, from.port), endAdapters(catalogue, setRun.a, to.port)) : []),
  ];
  return ways.sort((x, y) => (priceOfAdapters(x) ?? Infinity) - (priceOfAdapters(y) ?? Infinity) || x.length - y.length)[0];
}

export const priceOfAdapters = (adapters: readonly AdapterStep[]): number | undefined => (adapters.length === 0 ? 0 : sumPrices(adapters.map(({ adapter }) => adapter.price)));

const bothEnds = (a: readonly AdapterStep[] | undefined, b: readonly AdapterStep[] | undefined): AdapterStep[][] => (a && b ? [[...a, ...b]] : []);

/** A set's nut has the usual gender of its seat, and meets the port as it is or through adapters. An end that is not stated fits nothing for certain. */
function endAdapters(catalogue: Catalogue, end: SetRun["a"], port: Port): readonly AdapterStep[] | undefined {
  const face = faceOf(port);
  if (!end || !face) return undefined;
  const nut = { ...end, gender: opposite(usualPortGender(end.seat)) };
  // Most ends meet their port as they are, and need no search.
  return mates(nut, face) ? [] : fitterFor(catalogue).chain(face, nut);
}
