/** All of this is invented: the adapters on the shelf and their prices. */
import type { DemoTable } from "./demo-table";

const INVERTED = "inverted-flare-45";
const BUBBLE = "bubble-iso";
const PIPE = "pipe-taper";
const FLARE_37 = "flare-37";

export const adapters: DemoTable = {
  name: "Adapters",
  headings: ["Adapter", "Thread A", "Seat A", "Gender A", "Thread B", "Seat B", "Gender B", "Price"],
  rows: [
    ["AD-38-716", "3/8-24", INVERTED, "male", "7/16-24", INVERTED, "female", 3.2],
    ["AD-716-38", "7/16-24", INVERTED, "male", "3/8-24", INVERTED, "female", 3.2],
    ["AD-12-38", "1/2-20", INVERTED, "male", "3/8-24", INVERTED, "female", 3.6],
    ["AD-12-716", "1/2-20", INVERTED, "male", "7/16-24", INVERTED, "female", 3.8],
    ["AD-916-38", "9/16-18", INVERTED, "male", "3/8-24", INVERTED, "female", 4.1],
    ["AD-916-12", "9/16-18", INVERTED, "male", "1/2-20", INVERTED, "female", 4.3],
    // These change the seat.
    ["AD-P18-38", "1/8-27 NPT", PIPE, "male", "3/8-24", INVERTED, "female", 3.4],
    ["AD-P18-37", "1/8-27 NPT", PIPE, "male", "3/8-24", FLARE_37, "male", 4.6],
    ["AD-38-37", "3/8-24", INVERTED, "male", "3/8-24", FLARE_37, "male", 4.9],
    ["AD-M10-38", "M10x1", BUBBLE, "male", "3/8-24", INVERTED, "female", 5.2],
    ["AD-38-M10", "3/8-24", INVERTED, "male", "M10x1", BUBBLE, "female", 5.2],
    ["AD-M12-M10", "M12x1", BUBBLE, "male", "M10x1", BUBBLE, "female", 4.4],
  ],
};
