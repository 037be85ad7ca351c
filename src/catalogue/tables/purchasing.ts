/** PriceBreaks, Fluids and Operations: what tube costs by the lot, what fluid costs by the bottle, and how long work takes. */
import { FLUIDS } from "../../core/car";
import type { FluidBottle, Operation, PriceBreak } from "../../core/catalogue";
import { choice, figure, filled, name, NOT_NEGATIVE, quantity, text } from "../column";
import { table } from "../table-spec";
import { FLUID_WORDS } from "../trade-columns";
import { volume } from "../unit";

export const priceBreaksTable = table({
  name: "PriceBreaks",
  holds: "one price of one kind of tube from a quantity on",
  columns: {
    tube: name("Tube", "a tube of the Tube table"),
    fromQuantity: filled(figure("From quantity")),
    price: filled(figure("Price", NOT_NEGATIVE)),
  },
  knownBy: [["tube"], ["fromQuantity"], ["price"]],
  toCore: (row): PriceBreak => row,
});

export const fluidsTable = table({
  name: "Fluids",
  holds: "one size of bottle of one fluid",
  columns: {
    fluid: filled(choice("Fluid", FLUIDS, FLUID_WORDS)),
    bottle: filled(quantity("Bottle", volume)),
    price: figure("Price", NOT_NEGATIVE),
  },
  knownBy: [["fluid"], ["bottle"]],
  toCore: (row): FluidBottle => row,
});

export const operationsTable = table({
  name: "Operations",
  holds: "one operation of the bench or the car",
  columns: {
    name: name("Operation"),
    appliesTo: text("Applies to"),
    minutes: filled(figure("Minutes", NOT_NEGATIVE)),
  },
  knownBy: [["name"], ["minutes"]],
  toCore: (row): Operation => row,
});
