/** All of this is invented: the boosters and their figures. */
import type { DemoTable } from "./demo-table";

export const boosters: DemoTable = {
  name: "Boosters",
  headings: ["Component", "Diaphragm (in)", "Diaphragms", "Gain", "Jump-in (lbf)", "Cut-in (lbf)", "Spring (lbf)", "Vacuum side (in³)", "Air side (in³)"],
  rows: [
    ["BST-9", 9, 1, 5, 35, 18, 30, 190, 35],
    ["BST-8D", 8, 2, 6, 40, 20, 32, 230, 50],
    ["BST-M8", 7.9, 2, 4.5, 30, 16, 26, 225, 48],
  ],
};
