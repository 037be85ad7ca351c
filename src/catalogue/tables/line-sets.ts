/** LineSets and SetRuns: pre-bent sets, what they are bent for, and the runs in them. */
import type { LineSet, SetRun } from "../../core/catalogue";
import type { JointFace } from "../../core/joint";
import { choice, figure, filled, name, NOT_NEGATIVE } from "../column";
import { table } from "../table-spec";
import { distance, material, place, seat, thread, tubeSize, valveNames } from "../trade-columns";
import { refuseYears, yearColumns } from "./platforms";

const axleBrake = (heading: string) => choice(heading, ["disc", "drum"], { discs: "disc", drums: "drum" });

export const lineSetsTable = table({
  name: "LineSets",
  holds: "one pre-bent line set on one platform",
  columns: {
    name: name("Set"),
    platform: name("Platform", "a platform of the Platforms table"),
    ...yearColumns,
    valves: valveNames("Valves"),
    front: axleBrake("Front"),
    rear: axleBrake("Rear"),
    material: material("Material"),
    price: figure("Price", NOT_NEGATIVE),
    onHand: figure("On hand", NOT_NEGATIVE),
    frequency: figure("Frequency"),
  },
  knownBy: [["name"], ["platform"], ["valves", "front", "rear"], ["valves", "material", "price", "onHand", "frequency"]],
  toCore: (row, refuse): Omit<LineSet, "runs"> => {
    refuseYears(row, refuse);
    return row;
  },
});

export interface SetRunRow {
  readonly set: string;
  readonly run: SetRun;
}

export const setRunsTable = table({
  name: "SetRuns",
  holds: "one run of a pre-bent line set",
  columns: {
    set: name("Set", "a set of the LineSets table"),
    from: filled(place("From")),
    to: filled(place("To")),
    tube: tubeSize("Tube"),
    length: distance("Length"),
    threadA: thread("Thread A"),
    seatA: seat("Seat A"),
    threadB: thread("Thread B"),
    seatB: seat("Seat B"),
  },
  knownBy: [["set"], ["from"], ["to"]],
  toCore: (row): SetRunRow => ({
    set: row.set,
    run: { from: row.from, to: row.to, tube: row.tube, length: row.length, a: endOf(row.threadA, row.seatA), b: endOf(row.threadB, row.seatB) },
  }),
});

const endOf = (endThread: JointFace["thread"] | undefined, endSeat: JointFace["seat"] | undefined) =>
  endThread && endSeat ? { thread: endThread, seat: endSeat } : undefined;
