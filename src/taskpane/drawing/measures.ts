/** Sizes of the drawing, in its own units: one is about a pixel in a pane of 350. */
import { textWidth, type Lettering } from "./text-width";

export const lettering = {
  title: { size: 13, bold: true },
  model: { size: 10 },
  legend: { size: 9.2, capitals: true },
  part: { size: 11, bold: true },
  kind: { size: 9.5 },
  port: { size: 9 },
  nut: { size: 9.5 },
  run: { size: 10 },
  tag: { size: 9, bold: true },
  wheel: { size: 10, bold: true },
  place: { size: 9 },
  circuit: { size: 9, capitals: true },
  letter: { size: 10, bold: true },
} as const satisfies Readonly<Record<string, Lettering>>;

export type Writing = keyof typeof lettering;

export const widthOf = (text: string, writing: Writing): number => textWidth(text, lettering[writing]);

/** Outside the two columns of wheels. */
export const MARGIN = 6;
/** How far the nose stands out before them. */
export const NOSE = 12;
/** From the margin to the line that runs along a wheel column. */
export const COLUMN = 48;
export const TYRE = { width: 18, height: 58 };
/** Between lines that run side by side. */
export const LANE = 10;
/** From a line to the writing beside it. */
export const BESIDE = 5;
/** Between things that stand side by side in a row. */
export const APART = 10;
/** A port to the edge of its box. */
export const PORT_INSET = 12;
/** Line of writing at a port, and the two lines that name a run. */
export const NUT_ROOM = 14;
export const RUN_ROOM = 28;
/** Number of a run in its ring. */
export const TAG = 14;
/** A mark of severity with its letter. */
export const BADGE = { width: 25, height: 13, mark: 12 };
/** Longer names are cut on the drawing and stand whole in the list. */
export const MOST_LETTERS = { part: 16, port: 10, nut: 12, wheel: 14, title: 18, model: 26 };
