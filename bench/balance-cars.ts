/** Ten thousand cars of one list of parts, each on figures of its own, for peers that reckon their balance from the figures alone. */
import { parseCars } from "../src/catalogue/parse-cars";
import { judge } from "../src/core/balance/judgement";
import type { Catalogue } from "../src/core/catalogue";
import { equippedAs } from "../src/core/equipment";
import { ownFigureCars, type Rows } from "./workload";

/** Front discs, rear drums, one booster, one proportioning valve in the rear line. */
const PARTS = ["Harrow 4 Saloon", 1970, "DC-1", "DR-10", "MC-1", "BST-9", "BLK-E; PV-F; TEE-AX; SW-PD", "HOSE-FC; HOSE-R", "mild steel", "all", "no", "DOT 3", "", "", ""];

export function balanceCars(count: number): Rows {
  const { headings, rows } = ownFigureCars(count);
  return { headings, rows: rows.map(([name, customer, ...rest]) => [name as string, customer as string, ...PARTS, ...rest.slice(PARTS.length)]) };
}

/** What such a car's brakes are, in SI; read as the product reads it, and reckoned with by the peers in their own way. */
export interface Brakes {
  /** Torque of one wheel for each pascal above the threshold. [N m/Pa] */
  readonly torque: { readonly front: number; readonly rear: number };
  readonly threshold: { readonly front: number; readonly rear: number };
  readonly split: number;
  readonly slope: number;
  readonly wheelbase: number;
  readonly pedal: { readonly ratio: number; readonly area: number; readonly gain: number; readonly jumpIn: number; readonly cutIn: number; readonly most: number };
}

export function brakesOf(catalogue: Catalogue, { headings, rows }: Rows): Brakes {
  const car = parseCars(headings, rows.slice(0, 1)).cars[0]?.car;
  const { axles, pedal } = car ? judge(equippedAs(catalogue, car)).car : {};
  const valve = axles?.paths.LR.steps.map(({ duty }) => duty).find((duty) => duty.does === "proportioning");
  const wheelbase = catalogue.platforms.get("harrow 4 saloon")?.figures.wheelbase;
  if (!axles || !pedal?.assist || valve?.split === undefined || valve.slope === undefined || wheelbase === undefined) throw new Error("the demo's figures are not whole");
  const { front, rear } = axles.ends;
  const { gain, jumpIn, cutIn, most } = pedal.assist;
  return {
    torque: { front: front.torque, rear: rear.torque }, threshold: { front: front.threshold, rear: rear.threshold }, split: valve.split, slope: valve.slope, wheelbase,
    pedal: { ratio: pedal.ratio, area: pedal.area, gain, jumpIn, cutIn, most },
  };
}

export const DECELERATIONS = { Low: 0.3, Middle: 0.6, High: 0.8 } as const;
export const USES = [0.15, 0.3, 0.45, 0.6, 0.8] as const;
export const ADHESIONS = [0.2, 0.5, 0.8] as const;
