/** Which line of the rack a run is cut from. */
import type { Metres } from "./quantity";
import { sameTube, type Material, type TubeStock } from "./tube";

export interface ChosenStock {
  readonly chosen: TubeStock;
  /** Other walls of the same material and size are on the list, so the choice is an assumption. */
  readonly others: boolean;
}

/** The stock of a material and outside diameter that costs least a length; unpriced stock comes last, then the thinner name in order. */
export function stockFor(rack: readonly TubeStock[], material: Material, tube: Metres): ChosenStock | undefined {
  const fitting = rack.filter((stock) => stock.material === material && sameTube(stock.outsideDiameter, tube));
  const [chosen] = [...fitting].sort((a, b) => pricePerMetre(a) - pricePerMetre(b) || (a.name < b.name ? -1 : 1));
  return chosen && { chosen, others: fitting.some((stock) => Math.abs(stock.wall - chosen.wall) > 1e-6) };
}

/** Price of one metre; Infinity when price or length is not stated. */
export const pricePerMetre = (stock: TubeStock): number =>
  stock.price === undefined || stock.length === undefined ? Infinity : stock.price / stock.length;
