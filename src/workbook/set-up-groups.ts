/** What a workbook may be set up with; apart from the tables themselves, which are heavy and come when they are wanted. */
/** What a group of tables is good for, in the order in which a shop comes to need them. */
export interface SetUpGroup {
  readonly id: "cars" | "prices" | "stock" | "found";
  readonly name: string;
  readonly tables: readonly string[];
}

export const setUpGroups: readonly SetUpGroup[] = [
  { id: "cars", name: "Lines, flags and balance", tables: ["Cars", "Platforms", "Lengths", "Components", "Ports", "Passages", "Boosters", "WheelBrakes", "Nuts", "Adapters", "Tube", "Settings"] },
  { id: "prices", name: "Line sets, kits and prices", tables: ["LineSets", "SetRuns", "Kits", "PriceBreaks", "Fluids", "Operations"] },
  { id: "stock", name: "Stock and orders", tables: ["Pipeline", "Usage"] },
  { id: "found", name: "Parts and joints as found", tables: ["Seen", "Joins"] },
];

/** The sheets that show answers, and of our tables those that each reads, in the order in which a shop comes to ask. */
export const answerNeeds = {
  Verdict: ["Cars"], Runs: ["Cars"], Flags: ["Cars"], Tubing: ["Cars"], Demand: ["Pipeline", "Cars"], Reorder: ["Tube", "Usage"],
} as const;

export type AnswerName = keyof typeof answerNeeds;

/** The sheet and the cell of the catalogue's key, which every other formula takes. */
export const KEY_SHEET = "Catalog";
export const KEY_CELL = "B2";

/**
 * Which sheets with answers can be made and are not there.
 * @param tables names of our tables that are there or will be
 * @param sheets names of the sheets that are there
 */
export function missingAnswers(tables: readonly string[], sheets: readonly string[]): readonly AnswerName[] {
  const taken = new Set(sheets.map((name) => name.toLowerCase()));
  const names = Object.keys(answerNeeds) as AnswerName[];
  return names.filter((name) => answerNeeds[name].every((table) => tables.includes(table)) && !taken.has(name.toLowerCase()));
}
