/** All of this is invented: what is inside each valve, and every pressure and slope. */
import type { DemoTable } from "./demo-table";

export const passages: DemoTable = {
  name: "Passages",
  headings: [
    "Component", "From", "To", "Does", "Opens (psi)", "Full (psi)", "Split (psi)", "Slope",
    "Least split (psi)", "Most split (psi)", "Laden split (psi)", "Holds (psi)", "Bypass on failure",
  ],
  rows: [
    ["HV-1", "In", "Out", "hold-off", 75, 420, "", "", "", "", "", "", ""],

    ["CV-L", "Front in", "LF out", "hold-off", 75, 450, "", "", "", "", "", "", ""],
    ["CV-L", "Front in", "RF out", "hold-off", 75, 450, "", "", "", "", "", "", ""],
    ["CV-L", "Rear in", "Rear out", "proportioning", "", "", 375, 0.35, "", "", "", "", "yes"],

    ["CV-N", "Front in", "LF out", "through", "", "", "", "", "", "", "", "", ""],
    ["CV-N", "Front in", "RF out", "through", "", "", "", "", "", "", "", "", ""],
    ["CV-N", "Rear in", "Rear out", "proportioning", "", "", 400, 0.37, "", "", "", "", "yes"],

    // What is inside CV-X is not known: it is asked, never guessed from its look.
    ["CV-X", "Front in", "LF out", "", "", "", "", "", "", "", "", "", ""],
    ["CV-X", "Front in", "RF out", "", "", "", "", "", "", "", "", "", ""],
    ["CV-X", "Rear in", "Rear out", "", "", "", "", "", "", "", "", "", ""],

    ["CV-M", "Front in", "LF out", "hold-off", 70, 400, "", "", "", "", "", "", ""],
    ["CV-M", "Front in", "RF out", "hold-off", 70, 400, "", "", "", "", "", "", ""],
    ["CV-M", "Rear in", "Rear out", "proportioning", "", "", 360, 0.3, "", "", "", "", "yes"],

    ["PV-F", "In", "Out", "proportioning", "", "", 350, 0.35, "", "", "", "", ""],
    ["PV-M", "In", "Out", "proportioning", "", "", 330, 0.27, "", "", "", "", ""],
    ["PV-MS", "In", "Out", "proportioning", "", "", 330, 0.27, "", "", "", "", ""],
    ["PV-ML", "In", "Out", "load-sensing-proportioning", "", "", 260, 0.25, "", "", 700, "", ""],

    ["APV-1", "In", "Out", "adjustable-proportioning", "", "", "", 0.43, 100, 1000, "", "", ""],
    ["APV-P", "In", "Out", "adjustable-proportioning", "", "", "", 0.43, 100, 1000, "", "", ""],
    ["APV-MI", "In", "Out", "adjustable-proportioning", "", "", "", 0.4, 100, 900, "", "", ""],

    ["RV-2", "In", "Out", "residual", "", "", "", "", "", "", "", 2, ""],
    ["RV-10", "In", "Out", "residual", "", "", "", "", "", "", "", 10, ""],

    ["ALU-M", "1 in", "1 front", "through", "", "", "", "", "", "", "", "", ""],
    ["ALU-M", "1 in", "1 rear", "through", "", "", "", "", "", "", "", "", ""],
    ["ALU-M", "2 in", "2 front", "through", "", "", "", "", "", "", "", "", ""],
    ["ALU-M", "2 in", "2 rear", "through", "", "", "", "", "", "", "", "", ""],
  ],
};
