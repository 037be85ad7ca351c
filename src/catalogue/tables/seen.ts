/** Seen: the ports that somebody saw and measured on a body nobody could name. */
import type { SeenPort } from "../../core/seen-body";
import { inches, millimetres, type Metres } from "../../core/quantity";
import { column, name, Refusal, text, yesNo } from "../column";
import { numberOf } from "../cell";
import { table } from "../table-spec";
import { distance, gender, place, thread } from "../trade-columns";
import { threadPitch, type Unit } from "../unit";

/** A bare figure of 8 and over can only be threads per inch, one of 6 and less only a pitch in millimetres. */
const [LEAST_PER_INCH, MOST_MILLIMETRES] = [8, 6];

const pitch = column("Pitch", "threads per inch of 8 or more, or a pitch of 6 mm or less", (raw, unit): Metres | Refusal => {
  const figure = numberOf(raw);
  if (figure === undefined || figure <= 0) return new Refusal();
  if (unit && unit.name !== "") return (unit as Unit<Metres>).from(figure);
  if (figure >= LEAST_PER_INCH) return inches(1 / figure);
  return figure <= MOST_MILLIMETRES ? millimetres(figure) : new Refusal();
}, { quantity: threadPitch });

export interface SeenRow {
  readonly car: string;
  readonly body: string;
  readonly port: SeenPort;
  readonly place: string | undefined;
  readonly wire: boolean | undefined;
}

export const seenTable = table({
  name: "Seen",
  holds: "one port seen on a body",
  columns: {
    car: name("Car", "the car it is on"),
    body: name("Body", "a name for the body, the same for all its ports"),
    label: text("Port"),
    diameter: distance("Diameter"),
    pitch,
    gender: gender("Gender"),
    thread: thread("Thread"),
    side: text("Side"),
    place: place("Place"),
    wire: yesNo("Wire"),
  },
  knownBy: [["car"], ["body"], ["diameter", "thread"]],
  toCore: ({ car, body, label, diameter, pitch: read, gender: seen, thread: stated, side, place: where, wire }): SeenRow => ({
    car, body, place: where, wire, port: { label: label ?? "", diameter, pitch: read, gender: seen, thread: stated, side },
  }),
});
