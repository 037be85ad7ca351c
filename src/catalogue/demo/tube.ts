/** All of this is invented: prices, stock and lead times. Sizes and walls are common ones. */
import { DEMO_TODAY } from "./stock-history";
import { T1_4, T3_16, T5_16, type DemoTable } from "./demo-table";

const WALL = 0.028;

export const tube: DemoTable = {
  name: "Tube",
  headings: [
    "Tube", "Material", "Outside diameter (in)", "Wall (in)", "Form", "Length (in)", "Price", "On hand", "On order",
    "Lead time (weeks)", "Least bend radius (in)", "Yield (psi)", "Least order", "Multiple", "Order cost", "Due",
  ],
  rows: [
    ["MS-3/16 coil", "mild steel", T3_16, WALL, "coil", 300, 21, 3, 5, 2, 0.5, 25000, 5, 5, 18, DEMO_TODAY + 6],
    ["MS-3/16 stick", "mild steel", T3_16, WALL, "stick", 60, 5.4, 30, "", 2, 0.5, 25000, 10, 10, 18, ""],
    ["MS-1/4 coil", "mild steel", T1_4, WALL, "coil", 300, 27, 1, "", 2, 0.625, 25000, 5, 5, 18, ""],
    ["MS-1/4 stick", "mild steel", T1_4, WALL, "stick", 60, 6.9, 12, "", 2, 0.625, 25000, 10, 10, 18, ""],
    ["MS-5/16 coil", "mild steel", T5_16, WALL, "coil", 300, 34, 1, "", 3, 0.75, 25000, 5, 5, 18, ""],
    ["SS-3/16 stick", "stainless", T3_16, WALL, "stick", 72, 17, 6, 5, 4, 0.625, 30000, 10, 5, 25, DEMO_TODAY + 19],
    ["SS-1/4 stick", "stainless", T1_4, WALL, "stick", 72, 21, 5, "", 4, 0.75, 30000, 10, 5, 25, ""],
    ["SS-5/16 stick", "stainless", T5_16, WALL, "stick", 72, 26, 4, "", 4, 1, 30000, 10, 5, 25, ""],
    ["CN-3/16 coil", "copper-nickel", T3_16, WALL, "coil", 300, 46, 2, "", 2, 0.375, 16000, 5, 5, 18, ""],
    ["CN-1/4 coil", "copper-nickel", T1_4, WALL, "coil", 300, 62, 2, "", 2, 0.5, 16000, 5, 5, 18, ""],
    ["CN-5/16 coil", "copper-nickel", T5_16, WALL, "coil", 300, 79, 1, "", 3, 0.625, 16000, 5, 5, 18, ""],
  ],
};
