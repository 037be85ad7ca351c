/** All of this is invented: the pre-bent sets on the shelf, the valves each was bent for, and the runs in each. */
import { T1_4, T3_16, type DemoCell, type DemoTable } from "./demo-table";

export const lineSets: DemoTable = {
  name: "LineSets",
  headings: ["Set", "Platform", "First year", "Last year", "Valves", "Front", "Rear", "Material", "Price", "On hand", "Frequency"],
  rows: [
    ["LS-H2-DRUM", "Harrow 2 Saloon", 1962, 1967, "BLK-E", "drum", "drum", "mild steel", 148, 2, 5],
    ["LS-H2-SINGLE", "Harrow 2 Saloon", 1956, 1961, "BLK-4W", "drum", "drum", "mild steel", 122, 1, 3],
    ["LS-H4-EARLY", "Harrow 4 Saloon", 1967, 1970, "BLK-E; HV-1; PV-F", "disc", "drum", "mild steel", 196, 1, 6],
    ["LS-H4-LATER", "Harrow 4 Saloon", 1971, 1973, "CV-L", "disc", "drum", "mild steel", 179, 2, 8],
    ["LS-H4E-LATER", "Harrow 4 Estate", 1970, 1973, "CV-N", "disc", "drum", "mild steel", 184, 1, 3],
    ["LS-H6", "Harrow 6 Coupe", 1974, 1981, "CV-L", "disc", "drum", "mild steel", 172, 3, 9],
    ["LS-H6-SS", "Harrow 6 Coupe", 1974, 1981, "CV-L", "disc", "drum", "stainless", 284, 1, 2],
    ["LS-PS", "Pellin Saloon", 1975, 1986, "PV-M; PV-M", "disc", "drum", "copper-nickel", 168, 2, 7],
  ],
};

type Run = readonly [from: string, to: string, tube: number, length: number, threadA: string, threadB: string];

const setOf = (set: string, seat: string, runs: readonly Run[]): DemoCell[][] =>
  runs.map(([from, to, tube, length, threadA, threadB]) => [set, from, to, tube, length, threadA, seat, threadB, seat]);

const INVERTED = "inverted-flare-45";

const axleRuns = (left: number, right: number): Run[] => [
  ["axle-tee", "LR", T3_16, left, "3/8-24", "3/8-24"],
  ["axle-tee", "RR", T3_16, right, "3/8-24", "3/8-24"],
];

const blockRuns: Run[] = [
  ["master", "frame-front", T3_16, 15, "1/2-20", "1/2-20"],
  ["master", "frame-front", T3_16, 15, "9/16-18", "1/2-20"],
  ["frame-front", "LF", T3_16, 21, "3/8-24", "3/8-24"],
  ["frame-front", "RF", T3_16, 46, "3/8-24", "3/8-24"],
  ["frame-front", "rear-hose", T3_16, 96, "7/16-24", "3/8-24"],
];

/** Master to the later valve beside it, the valve to both front wheels, and one line back. */
const laterRuns = (left: number, right: number, rear: readonly [tube: number, length: number, thread: string]): Run[] => [
  ["master", "valve", T3_16, 9, "1/2-20", "1/2-20"],
  ["master", "valve", T3_16, 9, "9/16-18", "9/16-18"],
  ["valve", "LF", T3_16, left, "3/8-24", "3/8-24"],
  ["valve", "RF", T3_16, right, "3/8-24", "3/8-24"],
  ["valve", "rear-hose", rear[0], rear[1], "7/16-24", rear[2]],
];

export const setRuns: DemoTable = {
  name: "SetRuns",
  headings: ["Set", "From", "To", "Tube (in)", "Length (in)", "Thread A", "Seat A", "Thread B", "Seat B"],
  rows: [
    ...setOf("LS-H2-DRUM", INVERTED, [...blockRuns, ...axleRuns(26, 31)]),
    ...setOf("LS-H2-SINGLE", INVERTED, [
      ["master", "frame-front", T3_16, 15, "3/8-24", "3/8-24"],
      ["frame-front", "LF", T3_16, 21, "3/8-24", "3/8-24"],
      ["frame-front", "RF", T3_16, 46, "3/8-24", "3/8-24"],
      ["frame-front", "rear-hose", T3_16, 96, "3/8-24", "3/8-24"],
      ...axleRuns(26, 31),
    ]),
    ...setOf("LS-H4-EARLY", INVERTED, [
      ["master", "valve", T3_16, 8, "1/2-20", "7/16-24"],
      ["valve", "frame-front", T3_16, 12, "7/16-24", "1/2-20"],
      ["master", "frame-front", T3_16, 17, "9/16-18", "1/2-20"],
      ["frame-front", "LF", T3_16, 23, "3/8-24", "3/8-24"],
      ["frame-front", "RF", T3_16, 50, "3/8-24", "3/8-24"],
      ["frame-front", "frame-mid", T3_16, 47, "7/16-24", "7/16-24"],
      ["frame-mid", "rear-hose", T3_16, 49, "7/16-24", "3/8-24"],
      ...axleRuns(27, 32),
    ]),
    ...setOf("LS-H4-LATER", INVERTED, [...laterRuns(35, 62, [T3_16, 108, "3/8-24"]), ...axleRuns(27, 32)]),
    ...setOf("LS-H4E-LATER", INVERTED, [...laterRuns(35, 62, [T3_16, 117, "3/8-24"]), ...axleRuns(28, 33)]),
    ...setOf("LS-H6", INVERTED, [...laterRuns(26, 52, [T1_4, 104, "7/16-24"]), ...axleRuns(25, 30)]),
    ...setOf("LS-H6-SS", INVERTED, [...laterRuns(26, 52, [T1_4, 104, "7/16-24"]), ...axleRuns(25, 30)]),
    ...setOf("LS-PS", "bubble-iso", [
      ["master", "LF", T3_16, 44, "M10x1", "M10x1"],
      ["master", "frame-mid", T3_16, 58, "M10x1", "M10x1"],
      ["frame-mid", "RR", T3_16, 57, "M10x1", "M10x1"],
      ["master", "RF", T3_16, 21, "M10x1", "M10x1"],
      ["master", "frame-mid", T3_16, 58, "M10x1", "M10x1"],
      ["frame-mid", "LR", T3_16, 55, "M10x1", "M10x1"],
    ]),
  ],
};
