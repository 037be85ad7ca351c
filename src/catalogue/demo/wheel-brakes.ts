/** All of this is invented: the wheel brakes and their figures. */
import type { DemoTable } from "./demo-table";

export const wheelBrakes: DemoTable = {
  name: "WheelBrakes",
  headings: [
    "Component", "Pistons (a side)", "Piston (in)", "Type", "Friction", "Outer radius (in)", "Inner radius (in)", "Drum radius (in)",
    "Factor low", "Factor", "Factor high", "Threshold (psi)", "Clearance (in)", "Cup expanders", "Parking brake",
  ],
  rows: [
    ["DC-4", 2, 1.75, "fixed", 0.38, 5.6, 3.7, "", "", "", "", 8, 0.006, "", "no"],
    ["DC-1", 1, 2.75, "floating", 0.38, 5.5, 3.6, "", "", "", "", 8, 0.006, "", "no"],
    ["DC-R", 1, 1.625, "floating", 0.38, 5.3, 3.8, "", "", "", "", 8, 0.006, "", "yes"],
    ["DC-M", 1, 2.125, "floating", 0.38, 4.7, 3.1, "", "", "", "", 7, 0.006, "", "no"],
    ["DR-9F", 1, 1.0625, "duo-servo", 0.38, "", "", 4.5, 3.2, 3.8, 4.5, 40, 0.015, "no", "no"],
    ["DR-9", 1, 0.6875, "duo-servo", 0.38, "", "", 4.5, 3.2, 3.8, 4.5, 40, 0.015, "no", "yes"],
    ["DR-10", 1, 0.875, "leading-trailing", 0.38, "", "", 5, 1.7, 1.9, 2.1, 40, 0.015, "yes", "yes"],
    ["DR-12F", 1, 1.25, "two-leading", 0.38, "", "", 6, 2.6, 2.9, 3.2, 40, 0.018, "yes", "no"],
    ["DR-12", 1, 0.875, "leading-trailing", 0.38, "", "", 6, 1.7, 1.9, 2.1, 40, 0.018, "yes", "yes"],
    ["DR-12C", 1, 1.125, "leading-trailing", 0.38, "", "", 6, 1.7, 1.9, 2.1, 40, 0.018, "yes", "yes"],
    ["DR-M8", 1, 0.6875, "leading-trailing", 0.38, "", "", 4, 1.8, 2, 2.2, 35, 0.012, "yes", "yes"],
  ],
};
