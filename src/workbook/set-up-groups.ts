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
