/** Nuts and Adapters: what joins a tube, or one thread, to another. */
import type { Adapter, Nut } from "../../core/catalogue";
import { opposite, usualPortGender } from "../../core/joint";
import { figure, filled, name, NOT_NEGATIVE } from "../column";
import { table } from "../table-spec";
import { gender, seat, thread, tubeSize } from "../trade-columns";

export const nutsTable = table({
  name: "Nuts",
  holds: "one tube nut",
  columns: {
    name: name("Nut"),
    tube: filled(tubeSize("Tube")),
    thread: filled(thread("Thread")),
    seat: filled(seat("Seat")),
    gender: gender("Gender"),
    price: figure("Price", NOT_NEGATIVE),
  },
  knownBy: [["name"], ["tube"], ["thread"], ["seat"], ["gender"]],
  toCore: (row): Nut => ({ name: row.name, tube: row.tube, face: { thread: row.thread, seat: row.seat, gender: row.gender ?? opposite(usualPortGender(row.seat)) }, price: row.price }),
});

export const adaptersTable = table({
  name: "Adapters",
  holds: "one adapter between two threaded faces",
  columns: {
    name: name("Adapter"),
    threadA: filled(thread("Thread A")),
    seatA: filled(seat("Seat A")),
    genderA: filled(gender("Gender A")),
    threadB: filled(thread("Thread B")),
    seatB: filled(seat("Seat B")),
    genderB: filled(gender("Gender B")),
    price: figure("Price", NOT_NEGATIVE),
  },
  knownBy: [["name"], ["threadA"], ["seatA"], ["genderA"], ["threadB"], ["seatB"], ["genderB"]],
  toCore: (row): Adapter => ({
    name: row.name,
    a: { thread: row.threadA, seat: row.seatA, gender: row.genderA },
    b: { thread: row.threadB, seat: row.seatB, gender: row.genderB },
    price: row.price,
  }),
});
