/** Which line of the rack a run is cut from. */
import { allowanceOf } from "./allowance";
import { metres, type Metres } from "./quantity";
import type { Settings } from "./settings";
import { sameTube, type Material, type TubeStock } from "./tube";

export interface ChosenStock {
  readonly chosen: TubeStock;
  /** Other walls of the same material and size are on the list, so the choice is an assumption. */
  readonly others: boolean;
}

/** The stock of a material and outside diameter that costs least a length; unpriced stock comes last, then the thinner name in order. */
export function stockFor(rack: readonly TubeStock[], material: Material, tube: Metres): ChosenStock | undefined {
  const fitting = rack.filter((stock) => stock.material === material && sameTube(stock.outsideDiameter, tube));
  const [chosen] = [...fitting].sort((a, b) => (pricePerMetre(a) ?? Infinity) - (pricePerMetre(b) ?? Infinity) || (a.name < b.name ? -1 : 1));
  return chosen && { chosen, others: fitting.some((stock) => Math.abs(stock.wall - chosen.wall) > 1e-6) };
}

/** Undefined when price or length is not stated. */
export const pricePerMetre = ({ price, length }: TubeStock): number | undefined => (price === undefined || length === undefined ? undefined : price / length);

/** Tube that the runs take of each stock, allowances included; runs without a length or a stock are not in it. */
export function tubeNeeded(runs: readonly { readonly stock: TubeStock | undefined; readonly length: Metres | undefined }[], settings: Settings): { readonly stock: TubeStock; readonly length: Metres }[] {
  const byStock = new Map<TubeStock, number>();
  for (const { stock, length } of runs) if (stock && length !== undefined) byStock.set(stock, (byStock.get(stock) ?? 0) + length + allowanceOf(settings));
  return [...byStock].map(([stock, length]) => ({ stock, length: metres(length) }));
}
