/** Lengths: how much line lies between two places of a platform, as measured. */
import type { MeasuredLength } from "../../core/car";
import { filled, name } from "../column";
import { table } from "../table-spec";
import { distance, place, tubeSize } from "../trade-columns";

export const lengthsTable = table({
  name: "Lengths",
  holds: "one measured length between two places",
  columns: {
    platform: name("Platform", "a platform of the Platforms table"),
    from: filled(place("From")),
    to: filled(place("To")),
    length: filled(distance("Length")),
    tube: tubeSize("Tube"),
  },
  knownBy: [["platform"], ["from"], ["to"], ["length"]],
  toCore: (row): MeasuredLength => row,
});
