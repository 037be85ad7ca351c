/** Lengths: how much line lies between two places of a platform, as measured along the line or by the points it bends at. */
import type { Vector } from "../../core/bends/vector";
import { alongLegs, type MeasuredLength } from "../../core/car";
import { inches, type Metres } from "../../core/quantity";
import { numberOf, sayCell } from "../cell";
import { column, filled, name, Refusal } from "../column";
import { table } from "../table-spec";
import { DISTANCE_ACCEPTS, distanceOf, place, tubeSize } from "../trade-columns";
import { triplesOf } from "../triples";
import { coordinates, length, type Unit } from "../unit";

/** Figures in the unit of their own heading, or of nothing yet. */
interface Triples {
  readonly points: readonly Vector[];
  readonly unit: Unit<Metres> | undefined;
}

const TRIPLES_ACCEPT = "triples x y z split by ;, both ends included, such as 0 0 0; 12 0 0; 12 8 0";

const bends = column("Bends", TRIPLES_ACCEPT, (raw, unit): Triples | Refusal => {
  const triples = triplesOf(sayCell(raw)).map((triple) => triple.map(numberOf));
  const bad = triples.findIndex((triple) => triple.length !== 3 || triple.some((figure) => figure === undefined));
  if (bad >= 0) return new Refusal("data-out-of-range", `${TRIPLES_ACCEPT} (point ${bad + 1} is not three numbers)`);
  if (triples.length < 2) return new Refusal("data-out-of-range", `${TRIPLES_ACCEPT} (one point is no line)`);
  return { points: triples as unknown as Vector[], unit: unit?.name === "" ? undefined : (unit as Unit<Metres> | undefined) };
}, { quantity: coordinates });

const measured = { ...column("Length", `${DISTANCE_ACCEPTS} (blank: Bends gives the points)`, (raw, unit) => {
  const value = distanceOf(raw, unit);
  return value instanceof Refusal ? value : { value, unit: unit as Unit<Metres> };
}, { quantity: length }), judgedByRow: true };

const MOST = inches(2000);

export const lengthsTable = table({
  name: "Lengths",
  holds: "one measured length between two places",
  columns: {
    platform: name("Platform", "a platform of the Platforms table"),
    from: filled(place("From")),
    to: filled(place("To")),
    length: measured,
    tube: tubeSize("Tube"),
    bends,
  },
  knownBy: [["platform"], ["from"], ["to"], ["length", "bends"]],
  toCore: ({ platform, from, to, tube, length: stated, bends: triples }, refuse): MeasuredLength => {
    const unit = triples?.unit ?? stated?.unit;
    if (!stated && !triples) refuse("length", measured.accepts, "data-missing");
    if (triples && !unit) refuse("bends", "a unit in the heading, as Bends (in) or Bends (mm), where Length is blank", "data-missing");
    const points = triples && unit && triples.points.map(([x, y, z]): Vector => [unit.from(x), unit.from(y), unit.from(z)]);
    if (points && !(alongLegs(points) > 0 && alongLegs(points) < MOST)) refuse("bends", "points apart from one another, within 2000 in of line (50.8 m)");
    return { platform, from, to, tube, length: stated?.value ?? alongLegs(points ?? []), ...(points ? { points, byPointsOnly: stated === undefined } : {}) };
  },
});
