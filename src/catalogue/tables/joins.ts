/** Joins: what is joined to what on one car, as found there. */
import type { FoundJoin } from "../../core/car";
import { FLARES } from "../../core/joint";
import { blankMeans, choice, name, text, yesNo } from "../column";
import { table, type RowOf } from "../table-spec";
import { thread } from "../trade-columns";

/** What may be found on a car is more than what belongs there: a single 45° flare is a fault to report. */
const FOUND_FLARES = [...FLARES, "single 45°"] as const;
const FLARE_WORDS = {
  double: "double 45°", "double flare": "double 45°", "inverted flare": "double 45°", "bubble flare": "bubble", "iso bubble": "bubble",
  single: "single 45°", "single flare": "single 45°", "37 flare": "single 37°",
} as const;

const toColumns = { toComponent: text("To component"), toPort: text("To port") };

export const joinsTable = table({
  name: "Joins",
  holds: "one joint of one car, as found",
  columns: {
    car: name("Car", "a car of the Cars table"),
    fromComponent: name("From component", "a component of the Components table"),
    fromPort: name("From port", "a port of this component"),
    ...toColumns,
    nutThread: thread("Nut thread found"),
    flare: choice("Flare found", FOUND_FLARES, FLARE_WORDS),
    plugged: blankMeans(yesNo("Plug", { aliases: ["Plugged"] }), false, "no"),
  },
  knownBy: [["car"], ["fromComponent"], ["fromPort"]],
  toCore: (row, refuse): FoundJoin => {
    const to = farEnd(row);
    if (row.toComponent !== undefined && row.toPort === undefined) refuse("toPort", "a port of To component");
    if (row.toComponent === undefined && row.toPort !== undefined) refuse("toComponent", "the component of To port");
    return { car: row.car, from: { component: row.fromComponent, port: row.fromPort }, to, nutThread: row.nutThread, flare: row.flare, plugged: row.plugged };
  },
});

const farEnd = ({ toComponent, toPort }: RowOf<typeof toColumns>) =>
  toComponent === undefined || toPort === undefined ? undefined : { component: toComponent, port: toPort };
