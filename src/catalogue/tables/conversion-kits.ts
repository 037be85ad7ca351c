/** Kits: what a conversion or repair kit holds, one row a part of it. */
import type { KitContent } from "../../core/catalogue";
import { figure, filled, name, NOT_NEGATIVE } from "../column";
import { table } from "../table-spec";

export const kitsTable = table({
  name: "Kits",
  holds: "one component of one kit",
  columns: {
    kit: name("Kit", "a name for the kit, the same for all its components"),
    component: name("Component", "a component of the Components table"),
    quantity: filled(figure("Quantity")),
    price: figure("Price", NOT_NEGATIVE),
  },
  knownBy: [["kit"], ["component"], ["quantity"]],
  toCore: (row): KitContent => row,
});
