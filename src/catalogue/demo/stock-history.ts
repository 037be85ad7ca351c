/**
 * All of this is invented: what was cut from the rack in two and a half years, the quotes still open, and prices by the lot.
 * Demand is lumpy on purpose: many weeks of none, then a job or two.
 */
import type { DemoCell, DemoTable } from "./demo-table";

/** 20 November 2026 as the spreadsheet counts days: the last day of the history. A workbook made later moves every date on by whole weeks. */
export const DEMO_TODAY = 46_346;
/** Headings under which the demo's tables hold days. */
export const DEMO_DATES: readonly string[] = ["Date", "Earliest", "Likely", "Latest", "Due"];

const WEEKS = 130;
const DAYS_PER_WEEK = 7;

/** How one tube is used: chances of a job each week, the share of them that come to one, and inches a job. */
interface Habit {
  readonly tube: string;
  readonly chances: number;
  readonly share: number;
  readonly jobs: readonly number[];
}

const habits: readonly Habit[] = [
  { tube: "MS-3/16 coil", chances: 3, share: 0.45, jobs: [38, 64, 118, 191, 247, 262, 268] },
  { tube: "MS-3/16 stick", chances: 1, share: 0.3, jobs: [29, 41, 52, 110] },
  { tube: "MS-1/4 coil", chances: 2, share: 0.3, jobs: [44, 71, 92, 138] },
  { tube: "SS-3/16 stick", chances: 1, share: 0.24, jobs: [57, 203, 251, 289, 301] },
  { tube: "SS-1/4 stick", chances: 1, share: 0.12, jobs: [61, 84, 133] },
  { tube: "CN-3/16 coil", chances: 2, share: 0.28, jobs: [45, 97, 218, 264, 279] },
  { tube: "CN-1/4 coil", chances: 1, share: 0.2, jobs: [58, 87, 141] },
  { tube: "MS-5/16 coil", chances: 1, share: 0.08, jobs: [72, 95] },
  { tube: "CN-5/16 coil", chances: 1, share: 0.025, jobs: [80, 102] },
];

const chancesOfAWeek = habits.flatMap((habit) => Array.from({ length: habit.chances }, () => habit));

/** The same draws every time: Park and Miller's generator (Communications of the ACM 31(10), 1988, from memory). */
function draws(seed: number): () => number {
  let state = seed;
  return () => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647;
}

function usageRows(): DemoCell[][] {
  const draw = draws(1_968);
  const rows: DemoCell[][] = [];
  for (let week = WEEKS - 1; week >= 0; week -= 1) {
    for (const { tube, share, jobs } of chancesOfAWeek) {
      const day = Math.floor(draw() * 5);
      const job = jobs[Math.floor(draw() * jobs.length)] ?? 0;
      if (draw() < share) rows.push([DEMO_TODAY - week * DAYS_PER_WEEK - day, tube, job]);
    }
  }
  return rows.sort((a, b) => Number(a[0]) - Number(b[0]));
}

export const usage: DemoTable = { name: "Usage", headings: ["Date", "Tube", "Length (in)"], rows: usageRows() };

export const pipeline: DemoTable = {
  name: "Pipeline",
  headings: ["Quote", "Car", "Chance (%)", "Earliest", "Likely", "Latest", "Quantity"],
  rows: [
    ["Q-101", "Car 1", 80, DEMO_TODAY + 4, DEMO_TODAY + 7, DEMO_TODAY + 21, 1],
    ["Q-102", "Car 2", 60, DEMO_TODAY + 7, DEMO_TODAY + 18, DEMO_TODAY + 35, 1],
    ["Q-103", "Car 3", 35, DEMO_TODAY + 10, DEMO_TODAY + 24, DEMO_TODAY + 60, 2],
    ["Q-104", "Car 4", 50, DEMO_TODAY + 3, DEMO_TODAY + 10, DEMO_TODAY + 17, 1],
    ["Q-105", "Car 8", 40, DEMO_TODAY + 14, DEMO_TODAY + 42, DEMO_TODAY + 75, 1],
    ["Q-106", "Car 11", 70, DEMO_TODAY + 2, DEMO_TODAY + 9, DEMO_TODAY + 30, 3],
    // Still open though its dates are past, and one that names a car nobody entered.
    ["Q-090", "Car 6", 15, DEMO_TODAY - 40, DEMO_TODAY - 30, DEMO_TODAY - 5, 1],
    ["Q-107", "Car 99", 50, "", DEMO_TODAY + 14, "", 1],
  ],
};

export const priceBreaks: DemoTable = {
  name: "PriceBreaks",
  headings: ["Tube", "From quantity", "Price"],
  rows: [
    ["MS-3/16 coil", 20, 19],
    ["MS-3/16 coil", 40, 17.5],
    ["SS-3/16 stick", 25, 15.5],
    ["CN-3/16 coil", 10, 43],
    ["CN-3/16 coil", 20, 41],
  ],
};
