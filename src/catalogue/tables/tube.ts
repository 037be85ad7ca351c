/** Tube: the rack, one row for each kind of stock. */
import { inches } from "../../core/quantity";
import { STOCK_FORMS, type TubeStock } from "../../core/tube";
import { choice, figure, filled, name, NOT_NEGATIVE, quantity, type Range } from "../column";
import { day } from "../day";
import { table } from "../table-spec";
import { distance, material, tubeSize } from "../trade-columns";
import { leadTime, length, pressure } from "../unit";

const WALL: Range = { least: inches(0.01), most: inches(0.25), says: "from 0.01 in to 0.25 in (0.254 to 6.35 mm)" };

export const tubeTable = table({
  name: "Tube",
  holds: "one kind of tube in stock",
  columns: {
    name: name("Tube"),
    material: filled(material("Material")),
    outsideDiameter: filled(tubeSize("Outside diameter")),
    wall: filled(quantity("Wall", length, WALL)),
    form: filled(choice("Form", STOCK_FORMS, { sticks: "stick", coils: "coil", offcuts: "offcut" })),
    length: distance("Length"),
    price: figure("Price", NOT_NEGATIVE),
    onHand: figure("On hand", NOT_NEGATIVE),
    onOrder: figure("On order", NOT_NEGATIVE),
    leadTimeWeeks: quantity("Lead time", leadTime, NOT_NEGATIVE),
    leastBendRadius: distance("Least bend radius"),
    yieldStrength: quantity("Yield", pressure),
    leastOrder: figure("Least order"),
    orderMultiple: figure("Multiple"),
    orderCost: figure("Order cost", NOT_NEGATIVE),
    due: day("Due"),
  },
  knownBy: [["name"], ["material"], ["outsideDiameter"], ["wall"], ["form"]],
  toCore: (row, refuse): TubeStock => {
    if (2 * row.wall >= row.outsideDiameter) refuse("wall", "less than half of Outside diameter");
    return row;
  },
});
