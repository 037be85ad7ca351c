/**
 * Writes a part on one line, and turns the line into rows of the shop's tables:
 *
 *   BLK distribution-block @valve | <FI front 1/2-20 | >L front LF 3/8-24 | FI>L proportioning split=350 slope=0.4
 *
 * First the name, the kind and what stands in other columns; then ports (`<` in, `>` out); then passages (`FROM>TO`, several duties split by `+`).
 * A port with a thread and no seat has an inverted flare.
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
  const component = { Component: name, Kind: kind, ...wordsOf(words, COMPONENT_WORDS) };
  const { "Cup expanders": expanders, "Parking brake": parking, ...columns } = component as Row;
  const isPort = (cell: string): boolean => /^[<>]/.test(cell);
  return {
    Components: [columns],
    Ports: rest.filter(isPort).map((cell) => portRow(name, cell)),
    Passages: rest.filter((cell) => !isPort(cell)).flatMap((cell) => passageRows(name, cell)),
    WheelBrakes: expanders === undefined && parking === undefined ? [] : [{ Component: name, "Cup expanders": expanders ?? "", "Parking brake": parking ?? "" }],
  };
}

const COMPONENT_WORDS: Row = { price: "Price", arrow: "Arrow", residual: "Built-in residual (psi)", expanders: "Cup expanders", parking: "Parking brake", wire: "Wire", senses: "Senses", hand: "On hand" };
const PORT_WORDS: Row = { residual: "Built-in residual (psi)", reservoir: "Reservoir (in³)" };
const DUTY_WORDS: Row = { opens: "Opens (psi)", split: "Split (psi)", slope: "Slope", holds: "Holds (psi)" };

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
