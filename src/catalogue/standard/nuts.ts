/** Tube nuts that ship with the product. Male, unpriced; a Nuts table of the shop's own replaces them all. */
import type { Nut } from "../../core/catalogue";
import type { Seat } from "../../core/joint";
import { inches, millimetres, type Metres } from "../../core/quantity";
import { standardThread } from "./threads";

const J512 = "SAE J512, 45° inverted flare (from memory)";
const PRACTICE = "common practice, no source";

interface NutRow {
  readonly tube: string;
  readonly size: Metres;
  readonly thread: string;
  readonly seat: Seat;
  readonly source: string;
}

const inchRow = (tube: string, thread: string, source: string): NutRow => {
  const [numerator, denominator] = tube.split("/").map(Number);
  return { tube, size: inches(Number(numerator) / Number(denominator)), thread, seat: "inverted-flare-45", source };
};
const metricRow = (diameter: number, thread: string): NutRow => ({ tube: `${diameter} mm`, size: millimetres(diameter), thread, seat: "bubble-iso", source: PRACTICE });

const rows: readonly NutRow[] = [
  // The nut of each tube size.
  inchRow("1/8", "5/16-28", J512),
  inchRow("3/16", "3/8-24", J512),
  inchRow("1/4", "7/16-24", J512),
  inchRow("5/16", "1/2-20", J512),
  inchRow("3/8", "5/8-18", J512),
  inchRow("7/16", "11/16-18", J512),
  inchRow("1/2", "3/4-18", J512),
  // Oversize nuts: a bigger thread on the same bore, for the ports of masters and combination valves.
  inchRow("3/16", "7/16-24", PRACTICE),
  inchRow("3/16", "1/2-20", PRACTICE),
  inchRow("3/16", "9/16-18", PRACTICE),
  inchRow("1/4", "1/2-20", PRACTICE),
  inchRow("1/4", "9/16-18", PRACTICE),
  // ISO bubble.
  metricRow(4.75, "M10x1"),
  metricRow(4.75, "M11x1.5"),
  metricRow(4.75, "M12x1"),
  metricRow(6, "M12x1"),
  metricRow(8, "M14x1.5"),
];

export const standardNuts: readonly Nut[] = rows.map(({ tube, size, thread, seat, source }) => ({
  name: `N-${tube}-${thread}`,
  tube: size,
  face: { thread: standardThread(thread), seat, gender: "male" },
  source,
}));
