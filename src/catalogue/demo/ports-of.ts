/** Writes rows of the Ports table so that a part's ports read as one small table. */
import type { DemoCell } from "./demo-table";

export const PORT_HEADINGS = [
  "Component", "Port", "Flow", "Circuit", "Serves", "Thread", "Seat", "Gender", "Plugged", "Use", "Built-in residual (psi)", "Reservoir (in³)", "Stroke (in)",
] as const;

export const INVERTED = "inverted-flare-45";
export const BUBBLE = "bubble-iso";
export const BANJO = "banjo";
export const PIPE = "pipe-taper";

type Row = readonly [port: string, flow: "in" | "out", circuit: string, serves: string, thread: string, more?: More];

/** What most ports leave at its usual value. */
interface More {
  readonly seat?: string;
  readonly gender?: "male";
  readonly plugged?: "yes";
  readonly use?: "switch" | "bleed";
  readonly residual?: number;
  readonly reservoir?: number;
  readonly stroke?: number;
}

/** Ports of one component; the seat is theirs unless a row says another. */
export const portsOf = (component: string, seat: string, rows: readonly Row[]): DemoCell[][] =>
  rows.map(([port, flow, circuit, serves, thread, more = {}]) => [
    component, port, flow, circuit, serves, thread, more.seat ?? seat, more.gender ?? "female", more.plugged ?? "no", more.use ?? "line",
    more.residual ?? "", more.reservoir ?? "", more.stroke ?? "",
  ]);
