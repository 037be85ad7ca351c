/** All of this is invented: ports that somebody measured on bodies nobody could name, caliper errors and all. */
import type { DemoTable } from "./demo-table";

export const seen: DemoTable = {
  name: "Seen",
  headings: ["Car", "Body", "Port", "Diameter (in)", "Pitch", "Gender", "Thread", "Side", "Place", "Wire"],
  rows: [
    // A later combination valve, from three of its six ports: 1/2-20, 9/16-18 and 7/16-24, each a little off.
    ["Car 24", "casting with 77 on it", "from the master, nearer", 0.4535, "", "female", "", "", "valve", "yes"],
    ["Car 24", "casting with 77 on it", "from the master, farther", 0.5105, "", "female", "", "", "", ""],
    ["Car 24", "casting with 77 on it", "to the rear", 0.3985, "", "female", "", "", "", ""],
    // An early block: as the later valve, but for the port from the master's rear outlet.
    ["Car 22", "block on the frame", "from the master, nearer", 0.4525, 20, "female", "", "", "frame-front", "yes"],
    ["Car 22", "block on the frame", "from the master, farther", 0.4505, 20, "female", "", "", "", ""],
    ["Car 22", "block on the frame", "to the left front", 0.336, 24, "female", "", "", "", ""],
    ["Car 22", "block on the frame", "to the rear", 0.3965, 24, "female", "", "", "", ""],
    // A metric master: M12x1 and M10x1, the pitch in millimetres.
    ["Car 17", "master", "front", 0.4345, 1, "female", "", "", "master", ""],
    ["Car 17", "master", "rear", 0.356, 1, "female", "", "", "", ""],
    // Fits nothing that is listed.
    ["Car 20", "odd fitting", "the only hole", 0.79, "", "female", "", "", "", ""],
  ],
};
