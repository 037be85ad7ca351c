/** What a writing that broke off has left in the workbook, in sentences. Nothing is taken away: a sheet of that name may be somebody else's by now. */
import type { Remains } from "./run";

/** @param names of sheets that were not there before */
export function sheetsLeft(names: readonly string[]): Remains {
  return {
    look: async (context) => {
      const { worksheets } = context.workbook;
      worksheets.load("items/name");
      await context.sync();
      const there = names.filter((name) => worksheets.items.some((sheet) => sheet.name === name));
      return there.length === 0 ? undefined : `${listed(there)} ${there.length === 1 ? "is there but may not be whole" : "are there but may not be whole"}: ${there.length === 1 ? "look at it, delete it" : "look at them, delete them"}, and try again.`;
    },
    unseen: `See whether there is ${names.length === 1 ? `a sheet ${names[0] ?? ""}` : `any of the sheets ${names.join(", ")}`}: it may not be whole. Delete it before you try again.`,
  };
}

const listed = (names: readonly string[]): string => (names.length === 1 ? `The sheet ${names[0] ?? ""}` : `The sheets ${names.join(", ")}`);

/** @param rows that the table had */
export function rowLeft(table: string, rows: number): Remains {
  const advice = "may not be whole: look at it, delete it, and try again.";
  return {
    look: async (context) => {
      const body = context.workbook.tables.getItem(table).getDataBodyRange().load("rowCount");
      await context.sync();
      return body.rowCount > rows ? `The last row of the table ${table} is new and ${advice}` : undefined;
    },
    unseen: `The table ${table} may have a new last row, which ${advice}`,
  };
}
