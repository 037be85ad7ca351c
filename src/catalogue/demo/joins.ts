/** All of this is invented: what was found joined on the cars that came in with their lines on. */
import type { DemoTable } from "./demo-table";

export const joins: DemoTable = {
  name: "Joins",
  headings: ["Car", "From component", "From port", "To component", "To port", "Nut thread found", "Flare found", "Plug"],
  rows: [
    // The front outlet of the master was found on the rear inlet of the valve.
    ["Car 14", "MC-1", "Front out", "CV-L", "Rear in", "", "", ""],
    // The frame-mounted valve was found fed through its outlet.
    ["Car 15", "BLK-E", "Rear out", "PV-F", "Out", "", "", ""],
    // A nut of 7/16-20 was found in the 7/16-24 port: it starts, then strips.
    ["Car 21", "CV-L", "Rear out", "HOSE-R7", "In", "7/16-20", "", ""],
  ],
};
