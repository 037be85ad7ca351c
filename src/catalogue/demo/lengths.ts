/**
 * All of this is invented: no length here was measured on a car. Some pairs are missing on purpose, as they are in a real
 * shop's table, so that a line between them is bridged over other places and marked as estimated.
 */
import { T1_4, T3_16, type DemoTable } from "./demo-table";

type Pair = readonly [from: string, to: string, inches: number, tube: number, points?: string];

const platform = (name: string, pairs: readonly Pair[]) => pairs.map(([from, to, length, tube, points = ""]) => [name, from, to, length, tube, points]);

export const lengths: DemoTable = {
  name: "Lengths",
  headings: ["Platform", "From", "To", "Length (in)", "Tube (in)", "Bends (in)"],
  rows: [
    // The master stands under the floor, behind the front axle. The line across the front was measured by its points as well.
    ...platform("Harrow Roadster", [
      ["master", "valve", 10, T3_16],
      ["master", "frame-mid", 22, T3_16],
      ["valve", "frame-front", 40, T3_16],
      ["valve", "frame-mid", 18, T3_16],
      ["frame-front", "LF", 20, T3_16],
      ["frame-front", "RF", 41, T3_16, "0 0 0; 5 0 0; 5 24 0; 5 24 -4; 14 24 -4"],
      ["frame-mid", "rear-hose", 46, T3_16],
      ["axle-tee", "LR", 22, T3_16],
      ["axle-tee", "RR", 27, T3_16],
    ]),
    // frame-front to rear-hose is not measured.
    ...platform("Harrow 2 Saloon", [
      ["master", "valve", 7, T3_16],
      ["master", "frame-front", 15, T3_16],
      ["valve", "frame-front", 11, T3_16],
      ["frame-front", "LF", 21, T3_16],
      ["frame-front", "RF", 46, T3_16],
      ["frame-front", "frame-mid", 45, T3_16],
      ["frame-mid", "rear-hose", 51, T3_16],
      ["axle-tee", "LR", 26, T3_16],
      ["axle-tee", "RR", 31, T3_16],
    ]),
    // valve to LF, RF and frame-mid are not measured: no valve beside the master fed them when the car was new.
    ...platform("Harrow 4 Saloon", [
      ["master", "valve", 8, T3_16],
      ["master", "frame-front", 17, T3_16],
      ["valve", "valve", 9, T3_16], // two valves side by side on one bracket
      ["valve", "frame-front", 12, T3_16],
      ["frame-front", "LF", 23, T3_16],
      ["frame-front", "RF", 50, T3_16],
      ["frame-front", "frame-mid", 47, T3_16],
      ["frame-mid", "rear-hose", 49, T3_16],
      ["axle-tee", "LR", 27, T3_16],
      ["axle-tee", "RR", 32, T3_16],
    ]),
    ...platform("Harrow 4 Estate", [
      ["master", "valve", 8, T3_16],
      ["master", "frame-front", 17, T3_16],
      ["master", "frame-mid", 62, T3_16],
      ["valve", "frame-front", 12, T3_16],
      ["frame-front", "LF", 23, T3_16],
      ["frame-front", "RF", 50, T3_16],
      ["frame-front", "frame-mid", 47, T3_16],
      ["frame-mid", "rear-hose", 58, T3_16],
      ["axle-tee", "LR", 28, T3_16],
      ["axle-tee", "RR", 33, T3_16],
    ]),
    // The line to the rear is 1/4 in; the rest is 3/16 in.
    ...platform("Harrow 6 Coupe", [
      ["master", "valve", 9, T3_16],
      ["valve", "LF", 26, T3_16],
      ["valve", "RF", 52, T3_16],
      ["valve", "frame-mid", 56, T1_4],
      ["frame-mid", "rear-hose", 50, T1_4],
      ["valve", "rear-hose", 104, T1_4],
      ["axle-tee", "LR", 25, T3_16],
      ["axle-tee", "RR", 30, T3_16],
    ]),
    ...platform("Harrow Carrier", [
      ["master", "valve", 9, T3_16],
      ["master", "frame-front", 19, T3_16],
      ["valve", "frame-front", 13, T3_16],
      ["frame-front", "LF", 25, T3_16],
      ["frame-front", "RF", 54, T3_16],
      ["frame-front", "frame-mid", 60, T1_4],
      ["valve", "frame-mid", 66, T1_4],
      ["frame-mid", "rear-hose", 62, T1_4],
      ["axle-tee", "LR", 33, T3_16],
      ["axle-tee", "RR", 38, T3_16],
    ]),
    // Independent rear wheels with a hose each; master to LR and RR are not measured.
    ...platform("Pellin Saloon", [
      ["master", "LF", 44, T3_16],
      ["master", "RF", 21, T3_16],
      ["master", "valve", 12, T3_16],
      ["master", "frame-mid", 58, T3_16],
      ["valve", "LF", 36, T3_16],
      ["valve", "RF", 24, T3_16],
      ["valve", "frame-mid", 52, T3_16],
      ["frame-mid", "LR", 55, T3_16],
      ["frame-mid", "RR", 57, T3_16],
    ]),
    ...platform("Pellin Estate", [
      ["master", "LF", 44, T3_16],
      ["master", "RF", 21, T3_16],
      ["master", "frame-mid", 60, T3_16],
      ["frame-mid", "LR", 63, T3_16],
      ["frame-mid", "RR", 65, T3_16],
    ]),
    // spring-hanger is the shop's own place: where the load-sensing valve stands.
    ...platform("Pellin Van", [
      ["master", "frame-front", 20, T3_16],
      ["master", "frame-mid", 66, T3_16],
      ["frame-front", "LF", 28, T3_16],
      ["frame-front", "RF", 49, T3_16],
      ["frame-mid", "spring-hanger", 71, T3_16],
      ["spring-hanger", "rear-hose", 9, T3_16],
      ["axle-tee", "LR", 30, T3_16],
      ["axle-tee", "RR", 34, T3_16],
    ]),
  ],
};
