/**
 * All of this is invented. The threads of the tandem master, the early block, the hold-off valve and the later combination
 * valve follow common practice, no source; the rest is made up to go with them.
 */
import { BUBBLE, INVERTED, PIPE, portsOf } from "./ports-of";

const SWITCH = { seat: PIPE, use: "switch" } as const;

const masters = [
  ...portsOf("MC-1", INVERTED, [
    ["Front out", "out", "front", "front", "1/2-20", { reservoir: 9, stroke: 0.65 }],
    ["Rear out", "out", "rear", "rear", "9/16-18", { reservoir: 5, stroke: 0.55 }],
  ]),
  ...portsOf("MC-2", INVERTED, [
    ["Front out", "out", "front", "front", "1/2-20", { residual: 10, reservoir: 5, stroke: 0.65 }],
    ["Rear out", "out", "rear", "rear", "9/16-18", { residual: 10, reservoir: 5, stroke: 0.6 }],
  ]),
  ...portsOf("MC-3", INVERTED, [
    ["Front out", "out", "front", "front", "1/2-20", { reservoir: 10, stroke: 0.7 }],
    ["Rear out", "out", "rear", "rear", "9/16-18", { reservoir: 9, stroke: 0.6 }],
  ]),
  ...portsOf("MC-4", INVERTED, [
    ["Front out", "out", "front", "front", "1/2-20", { reservoir: 9, stroke: 0.65 }],
    ["Rear out", "out", "rear", "rear", "9/16-18", { residual: 10, reservoir: 5, stroke: 0.55 }],
  ]),
  ...portsOf("MC-S", INVERTED, [["Out", "out", "any", "any", "3/8-24", { residual: 10, reservoir: 10, stroke: 1.4 }]]),
  ...portsOf("MC-LOW", INVERTED, [
    ["Front out", "out", "front", "front", "3/8-24", { reservoir: 9, stroke: 0.7 }],
    ["Rear out", "out", "rear", "rear", "3/8-24", { reservoir: 7, stroke: 0.55 }],
  ]),
  ...portsOf("MC-M4", BUBBLE, [
    ["1 front", "out", "1", "LF", "M10x1", { reservoir: 7, stroke: 0.6 }],
    ["1 rear", "out", "1", "RR", "M10x1", { reservoir: 7, stroke: 0.6 }],
    ["2 front", "out", "2", "RF", "M10x1", { reservoir: 7, stroke: 0.55 }],
    ["2 rear", "out", "2", "LR", "M10x1", { reservoir: 7, stroke: 0.55 }],
  ]),
  ...portsOf("MC-M2", BUBBLE, [
    ["Front out", "out", "front", "front", "M12x1", { reservoir: 8, stroke: 0.65 }],
    ["Rear out", "out", "rear", "rear", "M10x1", { reservoir: 6, stroke: 0.55 }],
  ]),
];

const blocks = [
  ...portsOf("BLK-E", INVERTED, [
    ["Front in", "in", "front", "front", "1/2-20"],
    ["Rear in", "in", "rear", "rear", "1/2-20"],
    ["LF out", "out", "front", "LF", "3/8-24"],
    ["RF out", "out", "front", "RF", "3/8-24"],
    ["Rear out", "out", "rear", "rear", "7/16-24"],
    ["Switch", "out", "any", "any", "1/8-27 NPT", SWITCH],
  ]),
  ...portsOf("BLK-EP", INVERTED, [
    ["Front in", "in", "front", "front", "1/2-20"],
    ["Rear in", "in", "rear", "rear", "1/2-20"],
    ["LF out", "out", "front", "LF", "3/8-24"],
    ["RF out", "out", "front", "RF", "3/8-24"],
    ["Rear out", "out", "rear", "rear", "7/16-24"],
    ["Switch", "out", "any", "any", "1/8-27 NPT", { ...SWITCH, plugged: "yes" }],
  ]),
  ...portsOf("BLK-4W", INVERTED, [
    ["In", "in", "any", "any", "3/8-24"],
    ["LF out", "out", "any", "LF", "3/8-24"],
    ["RF out", "out", "any", "RF", "3/8-24"],
    ["Rear out", "out", "any", "rear", "3/8-24"],
  ]),
  ...portsOf("BLK-5W", INVERTED, [
    ["In", "in", "any", "any", "3/8-24"],
    ["Out 1", "out", "any", "any", "3/8-24"],
    ["Out 2", "out", "any", "any", "3/8-24"],
    ["Out 3", "out", "any", "any", "3/8-24"],
    ["Out 4", "out", "any", "any", "3/8-24"],
  ]),
  ...portsOf("BLK-M", BUBBLE, [
    ["1 in", "in", "1", "any", "M10x1"],
    ["2 in", "in", "2", "any", "M10x1"],
    ["1 front", "out", "1", "LF", "M10x1"],
    ["1 rear", "out", "1", "RR", "M10x1"],
    ["2 front", "out", "2", "RF", "M10x1"],
    ["2 rear", "out", "2", "LR", "M10x1"],
    ["Switch", "out", "any", "any", "1/8-27 NPT", SWITCH],
  ]),
];

const combinationPorts = (component: string) =>
  portsOf(component, INVERTED, [
    ["Front in", "in", "front", "front", "1/2-20"],
    ["Rear in", "in", "rear", "rear", "9/16-18"],
    ["LF out", "out", "front", "LF", "3/8-24"],
    ["RF out", "out", "front", "RF", "3/8-24"],
    ["Rear out", "out", "rear", "rear", "7/16-24"],
    ["Switch", "out", "any", "any", "1/8-27 NPT", SWITCH],
  ]);

const straightPorts = (component: string, seat: string, thread: string) =>
  portsOf(component, seat, [["In", "in", "any", "any", thread], ["Out", "out", "any", "any", thread]]);

const valves = [
  ...combinationPorts("CV-L"),
  ...combinationPorts("CV-N"),
  ...combinationPorts("CV-X"),
  ...portsOf("CV-M", BUBBLE, [
    ["Front in", "in", "front", "front", "M12x1"],
    ["Rear in", "in", "rear", "rear", "M10x1"],
    ["LF out", "out", "front", "LF", "M10x1"],
    ["RF out", "out", "front", "RF", "M10x1"],
    ["Rear out", "out", "rear", "rear", "M10x1"],
    ["Switch", "out", "any", "any", "M10x1", { use: "switch" }],
  ]),
  ...straightPorts("HV-1", INVERTED, "7/16-24"),
  ...straightPorts("PV-F", INVERTED, "7/16-24"),
  ...straightPorts("PV-M", BUBBLE, "M10x1"),
  ...portsOf("PV-MS", BUBBLE, [
    ["In", "in", "any", "any", "M10x1", { gender: "male" }],
    ["Out", "out", "any", "any", "M10x1"],
  ]),
  ...straightPorts("PV-ML", BUBBLE, "M10x1"),
  ...straightPorts("APV-1", INVERTED, "3/8-24"),
  ...straightPorts("APV-P", PIPE, "1/8-27 NPT"),
  ...straightPorts("APV-MI", INVERTED, "M10x1"),
  ...straightPorts("RV-2", INVERTED, "3/8-24"),
  ...straightPorts("RV-10", INVERTED, "3/8-24"),
  ...portsOf("ALU-M", BUBBLE, [
    ["1 in", "in", "1", "any", "M12x1"],
    ["2 in", "in", "2", "any", "M12x1"],
    ["1 front", "out", "1", "LF", "M10x1"],
    ["1 rear", "out", "1", "RR", "M10x1"],
    ["2 front", "out", "2", "RF", "M10x1"],
    ["2 rear", "out", "2", "LR", "M10x1"],
  ]),
];

export const portsOfMastersAndValves = [...masters, ...blocks, ...valves];
