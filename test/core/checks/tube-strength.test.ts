/**
 * The workshop's fronts do 2.2902 lbf for each psi from 10 psi on and carry 66 % of 3300 lb laden, with h/L 0.2 (worked in physics.test.ts): on adhesion 1.0
 * they lock at 0.86 x 3300 / 2.2902 + 10 = 1249 psi. Tube of 25 ksi yield (SAE J526, from memory), 3/16 in by 0.028 in, yields at 7334 psi by von Mises
 * (design of the balance, 7.3), 5.9 times that; with a wall of 0.010 in at 25000 / sqrt 3 x (1 - (0.1675 / 0.1875)^2) = 2915 psi, 2.3 times.
 */
import { table, TUBE, type CarCells, type Shop } from "../workshop";
import { rule } from "./cases";

const car: CarCells = { Conversion: "no" };
const tube = (wall: string, yieldPsi: string): Shop => ({ more: [table(`${TUBE} | Yield (psi)`, `T1 | mild steel | 0.1875 | ${wall} | coil | 300 | 25 | ${yieldPsi}`)] });

rule("burst-margin", [
  ["a wall of 0.010 in with a factor of 3", car, "burst-margin", tube("0.01", "25000")],
  ["the usual wall of 0.028 in", car, "", tube("0.028", "25000")],
  ["the thin wall where the shop asks for a factor of 1 only", car, "", { ...tube("0.01", "25000"), settings: ["burst safety factor | 1 |"] }],
  ["the thin wall of a stock whose yield nobody states", car, "", tube("0.01", "")],
]);
