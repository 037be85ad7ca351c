/** How much room a text takes, without a page to measure it on. Generous: a label may be narrower than its room, never wider. */

export interface Lettering {
  /** Height of the letters' square, in units of the drawing. */
  readonly size: number;
  readonly bold?: boolean;
  /** Written in capitals throughout, small and set apart, as a draughtsman letters. */
  readonly capitals?: boolean;
}

/**
 * @returns width in units of the drawing
 * @source advance widths of DejaVu Sans, among the widest of the plain faces in use, rounded up
 */
export function textWidth(text: string, { size, bold = false, capitals = false }: Lettering): number {
  const letters = [...(capitals ? text.toUpperCase() : text)];
  const ems = letters.reduce((sum, letter) => sum + widthOf(letter) + (capitals ? LETTER_SPACING : 0), 0);
  return Math.ceil(ems * size * (bold ? 1.13 : 1)) + 1;
}

/** Of the square of the letters, as the style sheet sets it. */
const LETTER_SPACING = 0.06;

/** Room above and below a line of text, from its baseline. */
export const ASCENT = 0.95;
export const DESCENT = 0.27;

/** A name cut to a length that a drawing can hold; the whole name stands in the list beside it. */
export const shortened = (name: string, most: number): string => (name.length <= most ? name : `${name.slice(0, most - 1)}…`);

const CLASSES: readonly (readonly [RegExp, number])[] = [
  [/[mMW@%—…]/, 1.01],
  [/[w×≈→+<>=~]/, 0.85],
  [/[OQGHNDU]/, 0.79],
  [/[A-Z]/, 0.71],
  [/[fijlrtI]/, 0.42],
  [/[a-z0-9#$?*_″]/, 0.645],
  [/[ .,:;'"!|/\\()[\]{}·°-]/, 0.4],
];

/** Letters of other scripts are taken as square. */
const widthOf = (letter: string): number => CLASSES.find(([letters]) => letters.test(letter))?.[1] ?? 1.05;
