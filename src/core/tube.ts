/** Tube: its sizes, its materials, and the stock it is bought as. */
import { inches, metres, millimetres, type Metres, type Pascals } from "./quantity";

export const MATERIALS = ["mild steel", "stainless", "copper-nickel", "copper"] as const;
export type Material = (typeof MATERIALS)[number];

export const STOCK_FORMS = ["stick", "coil", "offcut"] as const;
export type StockForm = (typeof STOCK_FORMS)[number];

/** One line of the rack: what a piece of tube is, how long, what it costs. */
export interface TubeStock {
  readonly name: string;
  readonly material: Material;
  readonly outsideDiameter: Metres;
  readonly wall: Metres;
  readonly form: StockForm;
  readonly length?: Metres | undefined;
  readonly price?: number | undefined;
  readonly onHand?: number | undefined;
  readonly onOrder?: number | undefined;
  readonly leadTimeWeeks?: number | undefined;
  readonly leastBendRadius?: Metres | undefined;
  readonly yieldStrength?: Pascals | undefined;
  readonly leastOrder?: number | undefined;
  /** Orders are whole multiples of this. */
  readonly orderMultiple?: number | undefined;
  readonly orderCost?: number | undefined;
  /** When what is on order is due, as the spreadsheet's day number. */
  readonly due?: number | undefined;
  readonly source?: string | undefined;
}

const SIXTEENTH = inches(1 / 16);
const SAME_SIZE = millimetres(0.07);

/**
 * The nominal outside diameter behind a stated one.
 * 4.75 mm is 3/16 in and 8 mm is 5/16 in (one tube under two names); 6 mm is not 1/4 in and 10 mm is not 3/8 in.
 * @param stated outside diameter as written [m]
 * @returns the inch size within 0.07 mm, else the diameter itself [m]
 */
export function nominalTube(stated: Metres): Metres {
  const sixteenths = Math.round(stated / SIXTEENTH);
  const nominal = metres(sixteenths * SIXTEENTH);
  return Math.abs(stated - nominal) <= SAME_SIZE ? nominal : stated;
}

/** Names a tube size for maps: two sizes are the same tube when their keys are. */
export const tubeKey = (stated: Metres): number => Math.round(nominalTube(stated) * 1e7);

export const sameTube = (a: Metres, b: Metres): boolean => tubeKey(a) === tubeKey(b);

/** `3/16 in` or `6 mm`, as a fitter says it. */
export function sayTube(stated: Metres): string {
  const nominal = nominalTube(stated);
  const sixteenths = Math.round(nominal / SIXTEENTH);
  if (Math.abs(nominal - sixteenths * SIXTEENTH) > 1e-9) return `${Number((nominal * 1000).toFixed(2))} mm`;
  const divisor = [16, 8, 4, 2, 1].find((d) => sixteenths % d === 0) ?? 1;
  const [numerator, denominator] = [sixteenths / divisor, 16 / divisor];
  return denominator === 1 ? `${numerator} in` : `${numerator}/${denominator} in`;
}
