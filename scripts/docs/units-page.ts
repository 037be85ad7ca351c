/** How headings say their units, and how cells may be written: the units from the list the reader itself goes by. */
import { tableSpecs } from "../../src/catalogue/table-specs";
import * as units from "../../src/catalogue/unit";
import type { Quantity } from "../../src/catalogue/unit";

const isQuantity = (one: unknown): one is Quantity => typeof one === "object" && one !== null && "units" in one;

/** @param table lays out a table of texts */
export function unitsPage(generated: string, table: (headings: readonly string[], rows: readonly (readonly string[])[]) => string): string {
  return [
    "# Units and headings",
    generated,
    "Source: `src/catalogue/unit.ts` and `src/catalogue/tables`. Every column is in [tables.md](tables.md).",
    "## Headings",
    HEADINGS,
    "## Units",
    "A unit stands in brackets at the end of the heading. It is read there and nowhere else, and never guessed: a heading of a quantity without a unit is told on top of the panel with the units it may have. Two columns of one table may have different units.",
    table(["Quantity", "In brackets", "Also written", "Without brackets"], Object.values(units).filter(isQuantity).map(rowOf)),
    "Rows of Settings carry their unit in a column of its own.",
    "## Cells",
    CELLS,
    "## Other names of columns",
    table(["Table", "Column", "Also written"], tableSpecs.flatMap(({ name, headings }) => headings.filter(({ aliases }) => aliases.length > 0).map(({ heading, aliases }) => [name, heading, aliases.join(", ")]))),
  ].join("\n\n") + "\n";
}

const HEADINGS = `- A table is known by its headings, not by its name or its place. Their order does not matter, nor do capitals, hyphens and spaces: \`Front brake\`, \`front-brake\` and \`FRONT BRAKE\` are one.
- Headings that Plumbline does not know are left alone, with their cells. Columns of your own may stand anywhere.
- The same heading twice is told, and the column is not read until one of them goes.
- Any heading of Platforms may also stand in Cars; there it counts for that car, before what the platform says.`;

const CELLS = `- A blank or \`?\` says that it is not known. \`none\` says that there is none. They are not the same: a blank booster is asked for, \`none\` is a car without one.
- A blank cell and the number 0 look alike to a formula, so a number 0 reads as blank. Where zero is meant, type it as text: \`'0\`.
- Numbers may be \`0.1875\`, \`3/16\`, \`1 1/8\` or \`1,234.5\`. Format such cells as text, or the spreadsheet makes a date of \`3/16\`. A decimal comma is refused, since it cannot be told from a thousands comma.
- Several parts in a cell are split by \`;\`, from the master on. \`RV-2@rear\` says where a part is, when it could be on either circuit: \`@front\`, \`@rear\`, \`@1\`, \`@2\`, or a wheel such as \`@LF\`.
- Words may be written with spaces, hyphens or capitals as you like; common other names are taken too: \`steel\` for mild steel, \`DOT4\` for DOT 4, \`bubble\` for bubble-iso, \`NPT\` for pipe-taper.
- Dates are date cells, or text such as 2030-01-31. A share is \`62\` under a heading with (%), \`0.62\` under one without, or the text \`62%\`.
- A cell that cannot be read never takes its row along: it is flagged with what was read and what would be taken, and counts as not known.`;

function rowOf({ name, units: known, alone }: Quantity): readonly string[] {
  const named = known.filter((unit) => unit.name !== "");
  return [name, named.map((unit) => unit.name).join(", "), named.flatMap(({ also }) => also).join(", "), alone ?? ""];
}
