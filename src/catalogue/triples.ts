/** Points in one cell, as text: `0 0 0; 4 0 0; 4 3 0`, also with commas, in brackets, or one point a line. */

/** The triples of a cell as their texts, whatever they hold; nobody has counted or read the figures yet. */
export function triplesOf(text: string): readonly (readonly string[])[] {
  const apart = text.replace(/[)\]}]/g, ";").replace(/[([{]/g, " ");
  return apart.split(/[;\n]/).map((triple) => triple.split(/[\s,]+/).filter((figure) => figure !== "")).filter((triple) => triple.length > 0);
}
