/** All of this is invented: bottles and their prices, what a conversion kit holds, minutes of work, and what the quotes of some cars sell. */
import type { DemoTable } from "./demo-table";

export const fluids: DemoTable = {
  name: "Fluids",
  headings: ["Fluid", "Bottle (fl oz)", "Price"],
  rows: [
    ["DOT 3", 12, 6.5], ["DOT 3", 32, 13.5],
    ["DOT 4", 12, 8.2], ["DOT 4", 32, 17.4],
    ["DOT 5", 12, 19.5],
    ["DOT 5.1", 16.9, 15.8],
  ],
};

/** Without a price of its own a component costs what Components says. */
export const kits: DemoTable = {
  name: "Kits",
  headings: ["Kit", "Component", "Quantity", "Price"],
  rows: [
    ["KIT-FDC", "DC-1", 2, 148], ["KIT-FDC", "HOSE-FC", 2, 16.5], ["KIT-FDC", "MC-4", 1, ""],
    ["KIT-RDC", "DC-R", 2, 172], ["KIT-RDC", "HOSE-RC", 2, 16.5],
  ],
};

export const operations: DemoTable = {
  name: "Operations",
  headings: ["Operation", "Applies to", "Minutes"],
  rows: [
    ["Bleed and test", "car", 45],
    ["Route and clip a line", "run", 8],
    ["Pressure test of a made-up line", "made-up run", 4],
    ["Mount a combination valve", "combination-valve", 25],
    ["Mount a hose", "hose", 10],
    ["Mount a caliper", "disc", 40],
  ],
};

/** What the quote sells besides the lines, by car; of the others the lines alone. */
export const SUPPLY: Readonly<Record<string, string>> = { "Car 3": "CV-L; fluid", "Car 4": "KIT-FDC; valves; fluid", "Car 8": "hoses; fluid" };

/** What this shop has settled for itself. */
export const OWN_SETTINGS: Readonly<Record<string, number>> = { "labour rate": 64, freight: 18 };
