/** All of this is invented: tees, unions, switches, hoses and wheel brakes, and the threads they carry. */
import { BANJO, BUBBLE, INVERTED, PIPE, portsOf } from "./ports-of";

const tee = (component: string, seat: string, inlet: string, outlet: string) =>
  portsOf(component, seat, [
    ["In", "in", "any", "any", inlet],
    ["Out 1", "out", "any", "any", outlet],
    ["Out 2", "out", "any", "any", outlet],
  ]);

const union = (component: string, seat: string, inlet: string, outlet: string) =>
  portsOf(component, seat, [["In", "in", "any", "any", inlet], ["Out", "out", "any", "any", outlet]]);

/** A hose takes a line at its near end and screws into a brake or a tee at its far end. */
const hose = (component: string, inlet: readonly [seat: string, thread: string], outlet: readonly [seat: string, thread: string]) =>
  portsOf(component, inlet[0], [
    ["In", "in", "any", "any", inlet[1]],
    ["Out", "out", "any", "any", outlet[1], { seat: outlet[0], gender: "male" }],
  ]);

const brake = (component: string, seat: string, inlet: string, bleeder: string) =>
  portsOf(component, seat, [
    ["In", "in", "any", "any", inlet],
    ["Bleeder", "out", "any", "any", bleeder, { seat: "", use: "bleed" }],
  ]);

/** A switch screws into a port of its own thread. */
const switchThread = (component: string, seat: string, thread: string) =>
  portsOf(component, seat, [["Thread", "in", "any", "any", thread, { gender: "male", use: "switch" }]]);

export const portsOfTeesHosesAndBrakes = [
  ...tee("TEE-38", INVERTED, "3/8-24", "3/8-24"),
  ...tee("TEE-716", INVERTED, "7/16-24", "3/8-24"),
  ...tee("TEE-AX", INVERTED, "3/8-24", "3/8-24"),
  ...tee("TEE-M", BUBBLE, "M10x1", "M10x1"),
  ...tee("TEE-AXM", BUBBLE, "M10x1", "M10x1"),

  ...union("UN-38", INVERTED, "3/8-24", "3/8-24"),
  ...union("UN-R", INVERTED, "7/16-24", "3/8-24"),
  ...union("UN-M", BUBBLE, "M10x1", "M10x1"),

  ...switchThread("SW-PD", PIPE, "1/8-27 NPT"),
  ...switchThread("SW-PDM", BUBBLE, "M10x1"),

  ...hose("HOSE-FC", [INVERTED, "3/8-24"], [BANJO, "7/16-20"]),
  ...hose("HOSE-FD", [INVERTED, "3/8-24"], [INVERTED, "3/8-24"]),
  ...hose("HOSE-R", [INVERTED, "3/8-24"], [INVERTED, "3/8-24"]),
  ...hose("HOSE-R7", [INVERTED, "7/16-24"], [INVERTED, "3/8-24"]),
  ...hose("HOSE-RC", [INVERTED, "3/8-24"], [BANJO, "7/16-20"]),
  ...hose("HOSE-FM", [BUBBLE, "M10x1"], [BANJO, "M10x1"]),
  ...hose("HOSE-RM", [BUBBLE, "M10x1"], [BUBBLE, "M10x1"]),
  ...hose("HOSE-RMA", [BUBBLE, "M10x1"], [BUBBLE, "M10x1"]),

  ...brake("DC-4", BANJO, "7/16-20", "1/4-28"),
  ...brake("DC-1", BANJO, "7/16-20", "3/8-24"),
  ...brake("DC-R", BANJO, "7/16-20", "3/8-24"),
  ...brake("DC-M", BANJO, "M10x1", "M8x1.25"),
  ...brake("DR-9F", INVERTED, "3/8-24", "1/4-28"),
  ...brake("DR-9", INVERTED, "3/8-24", "1/4-28"),
  ...brake("DR-10", INVERTED, "3/8-24", "1/4-28"),
  ...brake("DR-12F", INVERTED, "3/8-24", "3/8-24"),
  ...brake("DR-12", INVERTED, "3/8-24", "3/8-24"),
  ...brake("DR-12C", INVERTED, "3/8-24", "3/8-24"),
  ...brake("DR-M8", BUBBLE, "M10x1", "M8x1.25"),
];
