/**
 * All of this is invented: the customers, their cars, and what is wrong with some of them. Cars 1 to 11 are sound, one for
 * each common layout; 12 to 21 are wrong, each in its own way; 22 to 26 leave something out; 27 to 29 are conversions of one kind whose figures decide.
 */
import type { DemoTable } from "./demo-table";
import { SUPPLY } from "./quoting";

const asWritten: DemoTable = {
  name: "Cars",
  headings: [
    "Car", "Customer", "Platform", "Year", "Front brake", "Rear brake", "Master", "Booster", "Valves", "Hoses",
    "Material", "Scope", "Conversion", "Fluid", "Valve split set (psi)", "Accepted", "Notes",
  ],
  rows: [
    // Sound: block only, drums all round.
    ["Car 1", "Brindlewick", "Harrow 2 Saloon", 1966, "DR-9F", "DR-9", "MC-2", "none",
      "BLK-E; TEE-AX; SW-PD", "HOSE-FD; HOSE-R", "mild steel", "all", "no", "DOT 3", "", "", "all lines, keep the hoses"],
    // Sound: block, hold-off valve, frame-mounted proportioning valve.
    ["Car 2", "Oxmarsh", "Harrow 4 Saloon", 1969, "DC-1", "DR-10", "MC-1", "BST-9",
      "BLK-E; HV-1; PV-F; TEE-AX; SW-PD", "HOSE-FC; HOSE-R", "stainless", "all", "no", "DOT 3", "", "", "as built"],
    // Sound: one combination valve beside the master.
    ["Car 3", "Tillowby", "Harrow 6 Coupe", 1977, "DC-1", "DR-10", "MC-1", "BST-9",
      "CV-L; TEE-AX; SW-PD", "HOSE-FC; HOSE-R7", "mild steel", "all", "no", "DOT 3", "", "", ""],
    // Sound: block and adjustable proportioning; the drums' residual is in the master's rear outlet.
    ["Car 4", "Fennimoor", "Harrow 2 Saloon", 1964, "DC-1", "DR-9", "MC-4", "BST-8D",
      "BLK-E; APV-1; TEE-AX; SW-PD", "HOSE-FC; HOSE-R", "copper-nickel", "all", "yes", "DOT 4", 300, "", "front disc conversion"],
    // Sound: adjustable proportioning and tees, no block.
    ["Car 5", "Quillgate", "Harrow 4 Estate", 1971, "DC-1", "DR-10", "MC-1", "BST-9",
      "TEE-38; APV-1; TEE-AX; SW-LVL", "HOSE-FC; HOSE-R", "copper-nickel", "all", "no", "DOT 4", 500, "", ""],
    // Sound: diagonal split, two proportioning valves on the frame.
    ["Car 6", "Sallowdene", "Pellin Saloon", 1979, "DC-M", "DR-M8", "MC-M4", "BST-M8",
      "PV-M; PV-M; SW-LVL", "HOSE-FM; HOSE-RM", "copper-nickel", "all", "no", "DOT 4", "", "", ""],
    // Sound: diagonal split, two proportioning valves screwed into the master.
    ["Car 7", "Marlbeck", "Pellin Estate", 1984, "DC-M", "DR-M8", "MC-M4", "BST-M8",
      "PV-MS@1; PV-MS@2; SW-LVL", "HOSE-FM; HOSE-RM", "copper-nickel", "all", "no", "DOT 4", "", "", ""],
    // Sound: four discs, disc residuals under a low master.
    ["Car 8", "Pottersham", "Harrow Roadster", 1954, "DC-4", "DC-R", "MC-LOW", "none",
      "RV-2@front; RV-2@rear; TEE-38; APV-1; TEE-AX; SW-LVL", "HOSE-FC; HOSE-R; HOSE-RC@LR; HOSE-RC@RR",
      "stainless", "all", "yes", "DOT 4", 400, "", "master under the floor"],
    // Sound: one chamber, drums all round, before the rule year and as built.
    ["Car 9", "Withercombe", "Harrow 2 Saloon", 1959, "DR-9F", "DR-9", "MC-S", "none",
      "BLK-4W; TEE-AX", "HOSE-FD; HOSE-R", "mild steel", "all", "no", "DOT 3", "", "single-circuit: as built, and told what one leak does", "wants it as built"],
    // Sound: 1/4 in line to the rear into a valve with taper pipe ports, two adapters at each side of it.
    ["Car 10", "Dunthrop", "Harrow Carrier", 1975, "DC-1", "DR-12", "MC-1", "BST-8D",
      "BLK-EP; APV-P; TEE-AX; SW-LVL", "HOSE-FC; HOSE-R", "mild steel", "all", "no", "DOT 3", 450, "", ""],
    // Sound: metric, front/rear split, load-sensing valve.
    ["Car 11", "Yarrowfold", "Pellin Van", 1982, "DC-M", "DR-M8", "MC-M2", "BST-M8",
      "TEE-M; PV-ML; TEE-AXM; SW-LVL", "HOSE-FM; HOSE-RMA", "copper-nickel", "all", "no", "DOT 4", "", "", ""],

    // Wrong: a later valve was added and the early ones left in: metering-doubled, proportioning-doubled.
    ["Car 12", "Hobbleston", "Harrow 4 Saloon", 1970, "DC-1", "DR-10", "MC-1", "BST-9",
      "CV-L; HV-1; PV-F; TEE-AX; SW-PD", "HOSE-FC; HOSE-R", "mild steel", "all", "no", "DOT 3", "", "", "new valve, old ones still there"],
    // Wrong: the drums' residual valve was left in the front line of a disc conversion: residual-on-disc.
    ["Car 13", "Larkminster", "Harrow 2 Saloon", 1965, "DC-1", "DR-9", "MC-4", "none",
      "RV-10@front; BLK-E; APV-1; TEE-AX; SW-PD", "HOSE-FC; HOSE-R", "mild steel", "all", "yes", "DOT 3", 300, "", "front brakes get hot"],
    // Wrong: master lines crossed (see Joins): outlets-crossed.
    ["Car 14", "Gristhwaite", "Harrow 6 Coupe", 1978, "DC-1", "DR-10", "MC-1", "BST-9",
      "CV-L; TEE-AX; SW-PD", "HOSE-FC; HOSE-R7", "stainless", "all", "no", "DOT 3", "", "", "new master, fitted at home"],
    // Wrong: frame-mounted valve against its arrow (see Joins): flow-reversed.
    ["Car 15", "Cobblewell", "Harrow 4 Saloon", 1968, "DC-1", "DR-10", "MC-1", "BST-9",
      "BLK-E; HV-1; PV-F; TEE-AX; SW-PD", "HOSE-FC; HOSE-R", "mild steel", "all", "no", "DOT 3", "", "", ""],
    // Wrong: only one circuit of a diagonal split has its valve: proportioning-one-sided.
    ["Car 16", "Thimblerow", "Pellin Saloon", 1981, "DC-M", "DR-M8", "MC-M4", "BST-M8",
      "PV-M@1; SW-LVL", "HOSE-FM; HOSE-RM", "copper-nickel", "all", "no", "DOT 4", "", "", "one valve seized and taken out"],
    // Wrong: M10x1 ports with a 45° inverted seat, and no nut that brings one: seat-mismatch.
    ["Car 17", "Elderbrook", "Pellin Van", 1985, "DC-M", "DR-M8", "MC-M2", "BST-M8",
      "TEE-M; APV-MI; TEE-AXM; SW-LVL", "HOSE-FM; HOSE-RMA", "copper-nickel", "all", "no", "DOT 4", 400, "", ""],
    // Wrong: the hold-off valve is in the rear line: metering-on-rear.
    ["Car 18", "Runnelsby", "Harrow 4 Estate", 1969, "DC-1", "DR-10", "MC-1", "BST-9",
      "BLK-E; HV-1@rear; TEE-AX; SW-PD", "HOSE-FC; HOSE-R", "mild steel", "all", "no", "DOT 3", "", "", ""],
    // Wrong: the adjustable valve is in the front line, and nothing parts the fronts: proportioning-on-front, outlet-shortage.
    ["Car 19", "Skelmouth", "Harrow 4 Estate", 1972, "DC-1", "DR-10", "MC-1", "BST-9",
      "APV-1@front; TEE-AX; SW-LVL", "HOSE-FC; HOSE-R", "mild steel", "all", "no", "DOT 3", 350, "", "nose dives less now, he says"],
    // Wrong: one chamber after the rule year, and a fourth outlet with nothing on it: single-circuit, port-left-open.
    ["Car 20", "Barrowfleet", "Harrow Carrier", 1969, "DR-12F", "DR-12", "MC-S", "BST-8D",
      "BLK-5W; TEE-AX", "HOSE-FD; HOSE-R", "mild steel", "all", "no", "DOT 3", "", "", "older master fitted"],
    // Wrong: a nut that strips (see Joins), and a metric switch that does not fit the valve's pipe thread: thread-near-miss, switch-port-open.
    ["Car 21", "Nettlecote", "Harrow 6 Coupe", 1975, "DC-1", "DR-10", "MC-1", "BST-9",
      "CV-L; TEE-AX; SW-PDM", "HOSE-FC; HOSE-R7", "mild steel", "rear", "no", "DOT 3", "", "", "weeps at the valve"],

    // Missing: which valves are on it: data-missing.
    ["Car 22", "Averholm", "Harrow 4 Saloon", 1970, "DC-1", "DR-10", "MC-1", "BST-9",
      "?", "HOSE-FC; HOSE-R", "mild steel", "all", "no", "DOT 3", "", "", "will look and ring back"],
    // Missing: the platform, and what is inside the valve: data-missing.
    ["Car 23", "Pennyshaw", "", 1974, "DC-1", "DR-10", "MC-1", "?",
      "CV-X; TEE-AX; SW-PD", "HOSE-FC; HOSE-R7", "mild steel", "all", "no", "DOT 3", "", "", "bought in parts"],
    // Missing: a valve that Components does not list: unknown-part.
    ["Car 24", "Stavering", "Harrow 6 Coupe", 1980, "DC-1", "DR-10", "MC-1", "BST-9",
      "CV-77; TEE-AX; SW-PD", "HOSE-FC; HOSE-R7", "stainless", "all", "no", "DOT 3", "", "", "number read off the casting"],
    // Missing: year and valves; two sets of the platform fit, and either answer tells which: kit-ambiguous, data-missing.
    ["Car 25", "Wrenfold", "Harrow 4 Saloon", "", "DC-1", "DR-10", "MC-1", "BST-9",
      "?", "HOSE-FC; HOSE-R", "mild steel", "all", "no", "DOT 3", "", "", "rings again tonight"],
    // Missing: the material; two sets fit: kit-ambiguous, data-missing.
    ["Car 26", "Pipersea", "Harrow 6 Coupe", 1976, "DC-1", "DR-10", "MC-1", "BST-9",
      "CV-L; TEE-AX; SW-PD", "HOSE-FC; HOSE-R7", "", "all", "no", "DOT 3", "", "", "has not made up his mind"],

    // Decided by figures: a heavier axle with large cylinders, and an adjustable valve set too high for it: rear-locks-first.
    ["Car 27", "Quernmoor", "Harrow 4 Saloon", 1971, "DC-1", "DR-12C", "MC-1", "BST-9",
      "BLK-E; HV-1; APV-1; TEE-AX; SW-PD", "HOSE-FC; HOSE-R", "mild steel", "all", "yes", "DOT 4", 900, "", "axle of a Carrier"],
    // The same axle with no valve at all: rear-locks-first, proportioning-missing.
    ["Car 28", "Tansyford", "Harrow 4 Saloon", 1972, "DC-1", "DR-12C", "MC-1", "BST-9",
      "BLK-E; HV-1; TEE-AX; SW-PD", "HOSE-FC; HOSE-R", "mild steel", "all", "yes", "DOT 4", "", "", "swaps ends in the wet"],
    // The same axle with smaller cylinders and the valve set for it: every figure is inside its limit.
    ["Car 29", "Eskerly", "Harrow 4 Saloon", 1970, "DC-1", "DR-12", "MC-1", "BST-9",
      "BLK-E; HV-1; APV-1; TEE-AX; SW-PD", "HOSE-FC; HOSE-R", "mild steel", "all", "yes", "DOT 4", 450, "", "set up with a gauge"],
  ],
};

export const cars: DemoTable = { ...asWritten, headings: [...asWritten.headings, "Supply"], rows: asWritten.rows.map((row) => [...row, SUPPLY[String(row[0])] ?? ""]) };
