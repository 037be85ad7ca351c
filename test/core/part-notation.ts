/**
 * Writes a part on one line, and turns the line into rows of the shop's tables:
 *
 *   BLK distribution-block @valve | <FI front 1/2-20 | >L front LF 3/8-24 | FI>L proportioning split=350 slope=0.4
 *
 * First the name, the kind and what stands in other columns; then ports (`<` in, `>` out); then passages (`FROM>TO`, several duties split by `+`).
 * A port with a thread and no seat has an inverted flare.
 *
 * Figures that no test of the lines is about are filled in: with them any car of these parts brakes soundly, whatever its valves do.
 * `figures=none` leaves them out.
 */
import { PORT_CIRCUITS, SERVES } from "../../src/core/component";
import { GENDERS, SEATS } from "../../src/core/joint";

export type Row = Readonly<Record<string, string>>;

export interface PartRows {
  readonly Components: readonly Row[];
  readonly Ports: readonly Row[];
  readonly Passages: readonly Row[];
  readonly WheelBrakes: readonly Row[];
}

export function partRows(line: string): PartRows {
  const [head = "", ...rest] = line.split("|").map((cell) => cell.trim());
  const [name = "", kind = "", ...words] = head.split(/\s+/);
  const component = { Component: name, Kind: kind, ...wordsOf(words.filter((word) => word !== "figures=none"), COMPONENT_WORDS) };
  const isOfBrake = ([heading]: readonly [string, string]): boolean => Object.values(BRAKE_WORDS).includes(heading);
  const [brake, columns] = [Object.entries(component).filter(isOfBrake), Object.entries(component).filter((entry) => !isOfBrake(entry))];
  const isPort = (cell: string): boolean => /^[<>]/.test(cell);
  const figures = words.includes("figures=none") ? NO_FIGURES : figuresOf(name, kind);
  return {
    Components: [{ ...figures.Components, ...Object.fromEntries(columns) }],
    Ports: rest.filter(isPort).map((cell) => ({ ...(cell.startsWith(">") ? figures.Ports : {}), ...portRow(name, cell) })),
    Passages: rest.filter((cell) => !isPort(cell)).flatMap((cell) => passageRows(name, cell)).map((row) => ({ ...figures.Passages[row["Does"] ?? ""], ...row })),
    WheelBrakes: brake.length === 0 && !("Piston (in)" in figures.WheelBrakes) ? [] : [{ ...figures.WheelBrakes, Component: name, ...Object.fromEntries(brake) }],
  };
}

interface Figures {
  readonly Components: Row;
  readonly Ports: Row;
  readonly Passages: Readonly<Record<string, Row>>;
  readonly WheelBrakes: Row;
}

const NO_FIGURES: Figures = { Components: {}, Ports: {}, Passages: {}, WheelBrakes: {} };

const DISC: Row = { "Pistons (a side)": "1", Type: "floating", Friction: "0.4", "Outer radius (in)": "5.5", "Inner radius (in)": "3.5", "Threshold (psi)": "10", "Clearance (in)": "0.006" };
const DRUM: Row = { "Pistons (a side)": "1", Type: "leading-trailing", Factor: "2", "Factor low": "2", "Factor high": "2", "Drum radius (in)": "4.5", "Threshold (psi)": "10", "Clearance (in)": "0.01" };

/** Rear brakes, whose names have an R second (WR, DR, BR), are a fifth of the front ones, so that no valve decides anything. */
function figuresOf(name: string, kind: string): Figures {
  const size = /^.R/.test(name) ? { disc: "1", drum: "0.6" } : { disc: "2.25", drum: "1.35" };
  switch (kind) {
    case "disc": return { ...NO_FIGURES, Components: { "Volume at 1000 psi (in³)": "0.04" }, WheelBrakes: { ...DISC, "Piston (in)": size.disc } };
    case "drum": return { ...NO_FIGURES, Components: { "Volume at 1000 psi (in³)": "0.03" }, WheelBrakes: { ...DRUM, "Piston (in)": size.drum } };
    case "hose": return { ...NO_FIGURES, Components: { "Length (in)": "12", "Expansion (cc/ft)": "0.33" } };
    case "master": return { ...NO_FIGURES, Components: { "Bore (in)": "1" }, Ports: { "Stroke (in)": "0.7" } };
    default: return { ...NO_FIGURES, Passages: { "hold-off": { "Full (psi)": "300" }, "load-sensing-proportioning": { "Laden split (psi)": "600" } } };
  }
}

/** What a platform of the tests weighs and where, by heading: laden it is the same car, heavier. */
export const PLATFORM_FIGURES: Row = {
  "Wheelbase (in)": "100", "Weight (lb)": "3000", "Front share (%)": "66", "CG height (in)": "20", "Laden weight (lb)": "3300", "Laden front share (%)": "66", "Laden CG height (in)": "20",
  "Tyre radius (in)": "12.5", "Reservoir above calipers (in)": "12", "Pedal ratio": "6", "Pedal travel (in)": "6", "Vacuum (inHg)": "18",
};

const BRAKE_WORDS: Row = {
  expanders: "Cup expanders", parking: "Parking brake", pistons: "Pistons (a side)", piston: "Piston (in)", type: "Type", friction: "Friction", outer: "Outer radius (in)", inner: "Inner radius (in)",
  radius: "Drum radius (in)", low: "Factor low", factor: "Factor", high: "Factor high", threshold: "Threshold (psi)", clearance: "Clearance (in)",
};
const COMPONENT_WORDS: Row = {
  ...BRAKE_WORDS, bore: "Bore (in)", length: "Length (in)", expansion: "Expansion (cc/ft)", volume: "Volume at 1000 psi (in³)", price: "Price", arrow: "Arrow", residual: "Built-in residual (psi)", expanders: "Cup expanders", parking: "Parking brake", wire: "Wire", senses: "Senses", hand: "On hand" };
const PORT_WORDS: Row = { stroke: "Stroke (in)", residual: "Built-in residual (psi)", reservoir: "Reservoir (in³)" };
const DUTY_WORDS: Row = {
  opens: "Opens (psi)", full: "Full (psi)", split: "Split (psi)", slope: "Slope", holds: "Holds (psi)", least: "Least split (psi)", most: "Most split (psi)", laden: "Laden split (psi)", bypass: "Bypass on failure",
};

function portRow(component: string, cell: string): Row {
  const [port = "", ...words] = cell.slice(1).trim().split(/\s+/);
  const row: Record<string, string> = { Component: component, Port: port, Flow: cell.startsWith("<") ? "in" : "out" };
  for (const word of words) {
    if (is(PORT_CIRCUITS, word) && !("Circuit" in row)) row["Circuit"] = word;
    else if (is(SERVES, word)) row["Serves"] = word;
    else if (is(SEATS, word)) row["Seat"] = word;
    else if (is(GENDERS, word)) row["Gender"] = word;
    else if (word === "plugged") row["Plugged"] = "yes";
    else if (word === "switch") row["Use"] = "switch";
    else if (word.includes("=")) Object.assign(row, wordsOf([word], PORT_WORDS));
    else row["Thread"] = word;
  }
  return "Thread" in row && !("Seat" in row) ? { ...row, Seat: "inverted-flare-45" } : row;
}

function passageRows(component: string, cell: string): Row[] {
  const [way = "", ...rest] = cell.split(/\s+/);
  const [from = "", to = ""] = way.split(">");
  return rest.join(" ").split("+").map((duty) => {
    const [does = "", ...words] = duty.trim().split(/\s+/);
    return { Component: component, From: from, To: to, Does: does === "?" ? "" : does, ...wordsOf(words, DUTY_WORDS) };
  });
}

const is = (list: readonly string[], word: string): boolean => list.includes(word);

function wordsOf(words: readonly string[], columns: Row): Row {
  return Object.fromEntries(words.map((word) => {
    if (word.startsWith("@")) return ["Place", word.slice(1)];
    const [key = "", value = ""] = word.split("=");
    const column = columns[key];
    if (column === undefined) throw new Error(`part notation: ${word}`);
    return [column, value];
  }));
}
