/** Components: what a car's brake system is made of. */
import { COMPONENT_KINDS, SWITCH_SENSES, type Component } from "../../core/component";
import { inches } from "../../core/quantity";
import { choice, figure, filled, name, NOT_NEGATIVE, quantity, text, yesNo, type Range } from "../column";
import { table } from "../table-spec";
import { distance, place } from "../trade-columns";
import { length, pressure, volume, volumePerLength } from "../unit";

const BORE: Range = { least: inches(0.2), most: inches(6), says: "from 0.2 in to 6 in (5.1 to 152.4 mm)" };

const kind = choice("Kind", COMPONENT_KINDS, {
  "master cylinder": "master", block: "distribution-block", "metering valve": "hold-off-valve", "hold off": "hold-off-valve", "residual pressure valve": "residual-valve",
  "abs unit": "anti-lock-unit", "disc brake": "disc", "drum brake": "drum",
});

/** A component without its ports, passages and figures, which stand in tables of their own. */
export type ComponentRow = Omit<Component, "ports" | "passages" | "wheelBrake" | "booster">;

export const componentsTable = table({
  name: "Components",
  holds: "one part, by the shop's own name for it",
  columns: {
    name: name("Component"),
    kind: filled(kind),
    description: text("Description"),
    place: place("Place"),
    price: figure("Price", NOT_NEGATIVE),
    onHand: figure("On hand", NOT_NEGATIVE),
    bore: quantity("Bore", length, BORE),
    stroke: distance("Stroke"),
    builtInResidual: quantity("Built-in residual", pressure),
    directional: yesNo("Arrow"),
    fluidHeld: quantity("Fluid held", volume),
    volumeAt1000Psi: quantity("Volume at 1000 psi", volume),
    length: distance("Length"),
    expansion: quantity("Expansion", volumePerLength),
    wire: yesNo("Wire"),
    senses: choice("Senses", SWITCH_SENSES),
  },
  knownBy: [["name"], ["kind"]],
  toCore: (row): ComponentRow => ({ ...row, description: row.description ?? "" }),
});
