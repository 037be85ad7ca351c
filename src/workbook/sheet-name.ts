/** Names that a spreadsheet accepts for a sheet. */

const LONGEST = 31; // Excel's limit for a sheet name
const REFUSED = /[[\]:*?/\\]/g; // Excel refuses these in a sheet name

/**
 * The name a new sheet gets: the wanted one, or with " 2", " 3" … behind it when it is taken.
 * Names are compared without regard to case, characters that no sheet name may have become a space, and the result fits the length limit.
 * @param taken names of the sheets that are there
 */
export function freeSheetName(wanted: string, taken: readonly string[]): string {
  const plain = acceptable(wanted);
  const inUse = new Set([...taken.map((name) => name.toLowerCase()), "history"]); // Excel keeps "History" for itself
  for (let number = 1; ; number += 1) {
    const ending = number === 1 ? "" : ` ${number}`;
    const name = plain.slice(0, LONGEST - ending.length).trimEnd() + ending;
    if (!inUse.has(name.toLowerCase())) return name;
  }
}

/** Excel refuses a blank name and an apostrophe at either end, the grid of the local page one anywhere; the raised comma does as well. */
function acceptable(wanted: string): string {
  const trimmed = wanted.replace(REFUSED, " ").replace(/\s+/g, " ").replace(/^[\s']+|[\s']+$/g, "").replaceAll("'", "’");
  return trimmed === "" ? "Sheet" : trimmed;
}
