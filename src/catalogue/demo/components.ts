/** All of this is invented: names, prices and figures of parts that nobody makes. */
import type { DemoTable } from "./demo-table";

export const components: DemoTable = {
  name: "Components",
  headings: ["Component", "Kind", "Description", "Place", "Price", "On hand", "Bore (in)", "Stroke (in)", "Arrow", "Wire", "Length (in)", "Expansion (cc/ft)", "Volume at 1000 psi (in³)", "Fluid held (in³)"],
  rows: [
    ["MC-1", "master", "tandem, front discs and rear drums", "master", 118, 3, 1, 1.2, "", "", "", "", "", 18],
    ["MC-2", "master", "tandem, drums all round, check valve in both outlets", "master", 104, 2, 1, 1.25, "", "", "", "", "", 15],
    ["MC-3", "master", "tandem, four discs", "master", 142, 1, 1.125, 1.3, "", "", "", "", "", 20],
    ["MC-4", "master", "tandem, front discs and rear drums, check valve in the rear outlet", "master", 121, 2, 1, 1.2, "", "", "", "", "", 18],
    ["MC-S", "master", "one chamber, drums all round, check valve inside", "master", 76, 1, 1, 1.4, "", "", "", "", "", 9],
    ["MC-LOW", "master", "tandem, for under the floor", "master", 136, 2, 1, 1.25, "", "", "", "", "", 16],
    ["MC-M4", "master", "tandem, diagonal, four outlets", "master", 129, 2, 0.875, 1.15, "", "", "", "", "", 17],
    ["MC-M2", "master", "tandem, metric, two outlets", "master", 133, 1, 0.9375, 1.2, "", "", "", "", "", 17],

    ["BST-9", "booster", "9 in, one diaphragm", "", 168, 1, "", "", "", "", "", "", "", ""],
    ["BST-8D", "booster", "8 in, two diaphragms", "", 214, 2, "", "", "", "", "", "", "", ""],
    ["BST-M8", "booster", "200 mm, two diaphragms", "", 159, 1, "", "", "", "", "", "", "", ""],

    ["BLK-E", "distribution-block", "early block with differential-pressure switch port", "frame-front", 58, 4, "", "", "", "", "", "", "", ""],
    ["BLK-EP", "distribution-block", "early block, switch port plugged", "frame-front", 54, 1, "", "", "", "", "", "", "", ""],
    ["BLK-4W", "distribution-block", "one in, three out", "frame-front", 16, 6, "", "", "", "", "", "", "", ""],
    ["BLK-5W", "distribution-block", "one in, four out", "frame-front", 19, 3, "", "", "", "", "", "", "", ""],
    ["BLK-M", "distribution-block", "metric, diagonal, two in and four out, switch port", "valve", 63, 1, "", "", "", "", "", "", "", ""],

    ["HV-1", "hold-off-valve", "hold-off for the front discs", "valve", 49, 3, "", "", "yes", "", "", "", "", ""],

    ["CV-L", "combination-valve", "later valve: hold-off for the fronts, proportioning for the rears", "valve", 96, 5, "", "", "", "", "", "", "", ""],
    ["CV-N", "combination-valve", "looks like CV-L, has no hold-off section", "valve", 88, 2, "", "", "", "", "", "", "", ""],
    ["CV-X", "combination-valve", "found on trade-ins; nobody has opened one yet", "valve", "", "", "", "", "", "", "", "", "", ""],
    ["CV-M", "combination-valve", "metric: hold-off for the fronts, proportioning for the rears", "valve", 102, 1, "", "", "", "", "", "", "", ""],

    ["PV-F", "proportioning-valve", "on the frame, fixed", "frame-mid", 44, 3, "", "", "yes", "", "", "", "", ""],
    ["PV-M", "proportioning-valve", "metric, fixed, one for each circuit", "frame-mid", 38, 6, "", "", "yes", "", "", "", "", ""],
    ["PV-MS", "proportioning-valve", "metric, fixed, screws into a master outlet", "master", 35, 4, "", "", "yes", "", "", "", "", ""],
    ["PV-ML", "proportioning-valve", "metric, load-sensing, with a lever to the axle", "spring-hanger", 79, 1, "", "", "yes", "", "", "", "", ""],

    ["APV-1", "adjustable-proportioning-valve", "3/8-24 ports", "frame-mid", 52, 5, "", "", "yes", "", "", "", "", ""],
    ["APV-P", "adjustable-proportioning-valve", "taper pipe ports", "frame-mid", 47, 2, "", "", "yes", "", "", "", "", ""],
    ["APV-MI", "adjustable-proportioning-valve", "M10x1 ports with 45° inverted seats", "frame-mid", 41, 1, "", "", "yes", "", "", "", "", ""],

    ["RV-2", "residual-valve", "2 psi, for discs", "valve", 21, 8, "", "", "yes", "", "", "", "", ""],
    ["RV-10", "residual-valve", "10 psi, for drums", "valve", 21, 6, "", "", "yes", "", "", "", "", ""],

    ["ALU-M", "anti-lock-unit", "metric, two in and four out", "valve", 310, 1, "", "", "", "yes", "", "", "", ""],

    ["TEE-38", "tee", "3/8-24, on the frame", "frame-front", 7.5, 12, "", "", "", "", "", "", "", ""],
    ["TEE-716", "tee", "7/16-24 in, two 3/8-24 out", "frame-front", 9.5, 5, "", "", "", "", "", "", "", ""],
    ["TEE-AX", "tee", "3/8-24, on the axle", "axle-tee", 8.5, 9, "", "", "", "", "", "", "", ""],
    ["TEE-M", "tee", "M10x1, on the frame", "frame-front", 8, 7, "", "", "", "", "", "", "", ""],
    ["TEE-AXM", "tee", "M10x1, on the axle", "axle-tee", 9, 4, "", "", "", "", "", "", "", ""],

    ["UN-38", "union", "3/8-24 both ends", "frame-mid", 3.5, 20, "", "", "", "", "", "", "", ""],
    ["UN-R", "union", "7/16-24 to 3/8-24", "frame-mid", 4.5, 10, "", "", "", "", "", "", "", ""],
    ["UN-M", "union", "M10x1 both ends", "frame-mid", 3.8, 14, "", "", "", "", "", "", "", ""],

    ["SW-PD", "switch", "differential-pressure switch for the early and later valves", "", 14, 6, "", "", "", "yes", "", "", "", ""],
    ["SW-PDM", "switch", "differential-pressure switch, metric", "", 16, 2, "", "", "", "yes", "", "", "", ""],
    ["SW-LVL", "switch", "level switch in the reservoir cap", "", 12, 5, "", "", "", "yes", "", "", "", ""],

    ["HOSE-FC", "hose", "front, to a caliper", "front", 19, 16, "", "", "", "", 14, 0.33, "", 0.17],
    ["HOSE-FD", "hose", "front, to a wheel cylinder", "front", 17, 10, "", "", "", "", 13, 0.33, "", 0.16],
    ["HOSE-R", "hose", "one for the rear axle, 3/8-24 in", "rear-hose", 18, 9, "", "", "", "", 12, 0.33, "", 0.15],
    ["HOSE-R7", "hose", "one for the rear axle, 7/16-24 in", "rear-hose", 19, 6, "", "", "", "", 12, 0.33, "", 0.15],
    ["HOSE-RC", "hose", "rear wheel, to a caliper", "rear", 19, 4, "", "", "", "", 15, 0.33, "", 0.18],
    ["HOSE-FM", "hose", "metric, front, to a caliper", "front", 18, 12, "", "", "", "", 14, 0.33, "", 0.17],
    ["HOSE-RM", "hose", "metric, rear wheel, to a wheel cylinder", "rear", 17, 8, "", "", "", "", 13, 0.33, "", 0.16],
    ["HOSE-RMA", "hose", "metric, one for the rear axle", "rear-hose", 18, 3, "", "", "", "", 12, 0.33, "", 0.15],

    ["DC-4", "disc", "fixed caliper, four pistons", "", 240, 1, "", "", "", "", "", "", 0.05, 3.2],
    ["DC-1", "disc", "floating caliper, one piston", "", 165, 4, "", "", "", "", "", "", 0.055, 2.6],
    ["DC-R", "disc", "rear, floating caliper with parking brake", "", 188, 2, "", "", "", "", "", "", 0.035, 1.2],
    ["DC-M", "disc", "metric, floating caliper, one piston", "", 140, 3, "", "", "", "", "", "", 0.045, 1.6],
    ["DR-9F", "drum", "front, 9 in, cups without expanders", "", 96, 2, "", "", "", "", "", "", 0.04, 0.4],
    ["DR-9", "drum", "rear, 9 in, cups without expanders", "", 92, 2, "", "", "", "", "", "", 0.03, 0.25],
    ["DR-10", "drum", "rear, 10 in, cups with expanders", "", 98, 4, "", "", "", "", "", "", 0.035, 0.35],
    ["DR-12F", "drum", "front, 12 in, cups with expanders", "", 134, 1, "", "", "", "", "", "", 0.05, 0.6],
    ["DR-12", "drum", "rear, 12 in, cups with expanders", "", 128, 2, "", "", "", "", "", "", 0.04, 0.4],
    ["DR-12C", "drum", "rear, 12 in, large cylinders, cups with expanders", "", 136, 0, "", "", "", "", "", "", 0.05, 0.5],
    ["DR-M8", "drum", "rear, 203 mm, cups with expanders", "", 84, 3, "", "", "", "", "", "", 0.03, 0.25],
  ],
};
