/** What tube weighs. */
import { kilograms, type Kilograms, type Metres } from "./quantity";
import type { Material } from "./tube";

/** kg/m³, from memory: low-carbon steel, stainless 304 and 316, copper-nickel 90/10, phosphorus-deoxidised copper. */
export const DENSITIES: Readonly<Record<Material, number>> = { "mild steel": 7850, stainless: 8000, "copper-nickel": 8940, copper: 8940 };

/**
 * Mass of a length of tube, π (D - t) t ρ for each metre.
 * @param material whose density counts
 * @param tube outside diameter, wall and length [m]
 * @returns [kg]
 * @source geometry; densities from memory
 * @example tubeMass("mild steel", { outsideDiameter: millimetres(4.75), wall: millimetres(0.71), length: metres(1) }) // => 0.07074
 */
export const tubeMass = (material: Material, { outsideDiameter, wall, length }: { readonly outsideDiameter: Metres; readonly wall: Metres; readonly length: Metres }): Kilograms =>
  kilograms(Math.PI * (outsideDiameter - wall) * wall * length * DENSITIES[material]);
