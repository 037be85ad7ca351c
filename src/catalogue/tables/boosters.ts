/** Boosters: the figures of components of kind booster. */
import type { Booster } from "../../core/component";
import { count, figure, name, NOT_NEGATIVE, quantity } from "../column";
import { table } from "../table-spec";
import { distance } from "../trade-columns";
import { force, volume } from "../unit";

export interface BoosterRow {
  readonly component: string;
  readonly booster: Booster;
}

export const boostersTable = table({
  name: "Boosters",
  holds: "the figures of one booster",
  columns: {
    component: name("Component", "a component of kind booster"),
    diaphragm: distance("Diaphragm"),
    diaphragms: count("Diaphragms", { least: 1, most: 2, says: "from 1 to 2" }),
    gain: figure("Gain"),
    jumpIn: quantity("Jump-in", force, NOT_NEGATIVE),
    cutIn: quantity("Cut-in", force, NOT_NEGATIVE),
    spring: quantity("Spring", force, NOT_NEGATIVE),
    vacuumSide: quantity("Vacuum side", volume),
    airSide: quantity("Air side", volume),
  },
  knownBy: [["component"], ["gain", "diaphragm", "diaphragms", "jumpIn", "cutIn"]],
  toCore: ({ component, ...booster }): BoosterRow => ({ component, booster }),
});
