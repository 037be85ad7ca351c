/** Sizes and walls of brake tube that ship with the product: unpriced, none on hand. A Tube table of the shop's own replaces them all. */
import { inches, psi, type Pascals } from "../../core/quantity";
import type { Material, StockForm, TubeStock } from "../../core/tube";

const J526 = "SAE J526, single-wall welded low-carbon steel (nominal walls and least yield strength from memory)";
const PRACTICE = "common practice, no source";

interface TubeRow {
  readonly material: Material;
  readonly code: string;
  readonly form: StockForm;
  /** Nominal outside diameter as said, and wall in inches. */
  readonly sizes: readonly (readonly [outside: string, wall: number])[];
  readonly yieldStrength?: Pascals;
  readonly source: string;
}

const rows: readonly TubeRow[] = [
  {
    material: "mild steel", code: "MS", form: "coil", source: J526, yieldStrength: psi(25_000),
    sizes: [["1/8", 0.025], ["3/16", 0.028], ["1/4", 0.028], ["5/16", 0.028], ["3/8", 0.028]],
  },
  { material: "stainless", code: "SS", form: "stick", source: PRACTICE, sizes: [["3/16", 0.028], ["1/4", 0.028], ["5/16", 0.028], ["3/8", 0.028]] },
  { material: "copper-nickel", code: "CN", form: "coil", source: PRACTICE, sizes: [["3/16", 0.028], ["1/4", 0.028], ["5/16", 0.028], ["3/8", 0.028]] },
];

export const standardTube: readonly TubeStock[] = rows.flatMap(({ material, code, form, sizes, yieldStrength, source }) =>
  sizes.map(([outside, wall]) => ({ name: `T-${code}-${outside}`, material, form, outsideDiameter: inches(fractionValue(outside)), wall: inches(wall), yieldStrength, source })),
);

function fractionValue(fraction: string): number {
  const [numerator, denominator] = fraction.split("/").map(Number);
  return Number(numerator) / Number(denominator);
}
