/** From a model to the shop's tables and the car's row. Every port takes a thread in turn; parts that screw together take one between them. */
import { LAMP_SWITCH, LENGTH_ROWS, table, type CarCells, type Shop } from "../workshop";
import { rightResidual, type Model, type Valve } from "./model";

/** What a fault may add to a car beside its model. */
export interface Spoiling {
  /** Threads by `PART PORT`. */
  readonly threads?: Readonly<Record<string, string>>;
  /** Listed behind everything else, and before it. */
  readonly valves?: readonly string[];
  readonly before?: readonly string[];
  readonly parts?: readonly string[];
  readonly cells?: CarCells;
  readonly joins?: readonly string[];
  readonly withoutTees?: boolean;
  readonly more?: Shop["more"];
}

export interface Rendered {
  readonly cells: CarCells;
  readonly shop: Shop;
  /** Parts of each line with their inlets, from the master on: `V1 IN`. */
  readonly frontInlets: readonly string[];
  readonly rearInlets: readonly string[];
}

/** Threads and seats with a nut for 3/16 in tube among the standard nuts. */
const LINE_THREADS = ["3/8-24", "7/16-24", "1/2-20", "9/16-18", "M10x1 bubble-iso", "M11x1.5 bubble-iso", "M12x1 bubble-iso"];
/** A hose's end and the caliper under it, each with a near miss. */
export const DIRECT_THREADS = ["7/16-20 banjo", "M10x1 banjo", "3/8-24 banjo"];

const PLACES = ["master", "valve", "frame-mid", "LF", "RF", "LR", "RR"];
/** Every pair of places, the same place included, measured; lengths count up and mean nothing. */
const measured = (platform: string, places: readonly string[]): string[] =>
  places.flatMap((from, row) => places.slice(row).map((to, column) => `${platform} | ${from} | ${to} | ${10 + 7 * row + column} | 0.1875`));
/** A with a hose to its axle, W with hoses at its rear wheels, X the same and split diagonally. */
export const PLATFORMS = [
  table("Platform | First year | Last year | Split", "A | 1958 | 1985 | front/rear", "W | 1958 | 1985 | front/rear", "X | 1958 | 1985 | diagonal"),
  table(LENGTH_ROWS, ...measured("A", [...PLACES, "rear-hose", "axle-tee"]), ...measured("W", PLACES), ...measured("X", PLACES)),
];
const platformOf = ({ split, rearEnd }: Model): string => (split === "diagonal" ? "X" : rearEnd === "two hoses" ? "W" : "A");

export function render(model: Model, spoiling: Spoiling = {}): Rendered {
  const threadOf = threadsInTurn(model, spoiling.threads ?? {});
  const context: Context = { model, threadOf, parts: [], valves: [], front: [], rear: [] };
  addMaster(context);
  if (model.split === "diagonal") addDiagonal(context);
  else addLines(context);
  addRearEnd(context);
  addFronts(context);
  const tees = spoiling.withoutTees ? [] : context.valves.filter(isTee);
  const others = context.valves.filter((name) => !isTee(name));
  const valves = [...(spoiling.before ?? []), ...(model.teesFirst ? [...tees, ...others] : [...others, ...tees]), ...(spoiling.valves ?? [])];
  return {
    cells: {
      Platform: platformOf(model), Year: String(model.year), Master: "M", "Front brake": "BF", "Rear brake": "BR", Material: model.material,
      Hoses: [...hosesAt(model, "HFX", ["LF", "RF"]), ...(model.rearEnd === "two hoses" ? hosesAt(model, "HRW", ["LR", "RR"]) : ["HRX"])].join("; "), Valves: valves.length > 0 ? valves.join("; ") : "none", ...spoiling.cells,
    },
    shop: { workshopParts: ["SW", LAMP_SWITCH], parts: [...context.parts, ...(spoiling.parts ?? [])], ...(spoiling.joins ? { joins: spoiling.joins } : {}), ...(spoiling.more ? { more: spoiling.more } : {}) },
    frontInlets: context.front, rearInlets: context.rear,
  };
}

const isTee = (name: string): boolean => /^T\d/.test(name);
const hosesAt = ({ hosesListed }: Model, name: string, wheels: readonly string[]): string[] =>
  ({ once: [name], twice: [name, name], "by wheel": wheels.map((wheel) => `${name}@${wheel}`) })[hosesListed];

interface Context {
  readonly model: Model;
  readonly threadOf: (part: string, port: string) => string;
  readonly parts: string[];
  readonly valves: string[];
  readonly front: string[];
  readonly rear: string[];
}

function threadsInTurn({ threads }: Model, given: Readonly<Record<string, string>>) {
  let turn = 0;
  return (part: string, port: string): string => {
    const thread = LINE_THREADS[threads[turn++ % threads.length] ?? 0] ?? "3/8-24";
    return given[`${part} ${port}`] ?? thread;
  };
}

function addMaster({ model, threadOf, parts }: Context): void {
  const out = (name: string, rest: string, held?: number) => `>${name} ${threadOf("M", name)} ${rest}${held === undefined ? "" : ` residual=${held}`}`;
  const [first, second] = model.mirrored ? [["RF", "LR"], ["LF", "RR"]] : [["LF", "RR"], ["RF", "LR"]];
  const ports = {
    single: [out("O", "")],
    diagonal: model.outlets === "one" ? [out("P", "1"), out("S", "2")] : [...(first ?? []).map((wheel) => out(`P${wheel}`, `1 ${wheel}`)), ...(second ?? []).map((wheel) => out(`S${wheel}`, `2 ${wheel}`))],
    "front/rear": [...(model.outlets === "one" ? [out("F", "front", model.builtIn.front)] : ["LF", "RF"].map((wheel) => out(`F${wheel}`, `front ${wheel}`, model.builtIn.front))), out("R", "rear", model.builtIn.rear)],
  }[model.split];
  parts.push(["M master @master", ...ports].join(" | "));
}

const DUTY_WORDS = (valve: Valve): string =>
  ({ residual: `residual holds=${valve.holds}`, "hold-off": "hold-off opens=80", proportioning: "proportioning split=350 slope=0.4", "adjustable-proportioning": "adjustable-proportioning slope=0.43", limiting: "limiting split=400", union: "through" })[valve.does];
const KIND_WORDS = { residual: "residual-valve", "hold-off": "hold-off-valve", proportioning: "proportioning-valve", "adjustable-proportioning": "adjustable-proportioning-valve", limiting: "proportioning-valve", union: "union" };

/** Lists one valve of a line, under a name of its own. */
function addValve(context: Context, valve: Valve, line: "front" | "rear"): string {
  const { model, threadOf, parts, valves } = context;
  const name = `V${parts.length}`;
  const circuit = valve.saidBy === "ports" && model.split !== "single" ? line : "";
  parts.push(`${name} ${KIND_WORDS[valve.does]} @${valve.place} arrow=${valve.does === "union" ? "no" : "yes"} | <IN ${circuit} ${threadOf(name, "IN")} | >OUT ${circuit} ${threadOf(name, "OUT")} | IN>OUT ${DUTY_WORDS(valve)}`);
  context[line].push(`${name} IN`);
  valves.push(valve.saidBy === "row" ? `${name}@${line}` : name);
  return valves.at(-1) ?? name;
}

function addLines(context: Context): void {
  const { model, valves } = context;
  const listed = model.frontLine.map((valve) => ({ valve, name: addValve(context, valve, "front") }));
  for (const valve of model.rearBefore) addValve(context, valve, "rear");
  if (model.body) {
    if (model.split === "single") addSingleBlock(context);
    else addBody(context);
  }
  const late = listed.find(({ valve }) => valve.does === "hold-off" && model.holdOffListedLate && model.body);
  if (late) valves.push(...valves.splice(valves.indexOf(late.name), 1));
  for (const valve of model.rearBehind) addValve(context, valve, "rear");
}

function extras(context: Context, name: string): string[] {
  const { body } = context.model;
  if (body?.switchPort === "switch") context.valves.push("SW");
  return [
    ...(body?.pluggedPort ? [`>X ${context.threadOf(name, "X")} plugged`] : []),
    ...(body && body.switchPort !== "none" ? [`>SW 1/8-27NPT pipe-taper switch${body.switchPort === "plugged" ? " plugged" : ""}`] : []),
  ];
}

function addBody(context: Context): void {
  const { model: { body }, threadOf, parts, valves } = context;
  const port = (sign: string, name: string, rest: string) => `${sign}${name} ${threadOf("B", name)} ${rest}`;
  const duty = (has: boolean | undefined, words: string): string => (has ? words : "through");
  const ports = [port("<", "FI", "front"), port("<", "RI", "rear"), port(">", "L", "front LF"), port(">", "R", "front RF"), port(">", "RO", "rear")];
  const front = duty(body?.holdOff, "hold-off opens=80");
  parts.push([`B combination-valve @valve`, ...ports, ...extras(context, "B"), `FI>L ${front}`, `FI>R ${front}`, `RI>RO ${duty(body?.proportioning, "proportioning split=350 slope=0.4")}`].join(" | "));
  valves.push("B");
  context.front.push("B FI");
  context.rear.push("B RI");
}

function addSingleBlock(context: Context): void {
  const { threadOf, parts, valves } = context;
  const port = (sign: string, name: string, rest: string) => `${sign}${name} ${threadOf("B", name)} ${rest}`;
  parts.push(["B distribution-block @valve", port("<", "I", ""), port(">", "L", "LF"), port(">", "R", "RF"), port(">", "RO", "rear"), ...extras(context, "B")].join(" | "));
  valves.push("B");
}

function addDiagonal(context: Context): void {
  const { model, threadOf, parts, valves } = context;
  const port = (part: string, sign: string, name: string, rest: string) => `${sign}${name} ${threadOf(part, name)} ${rest}`;
  if (model.body) {
    const wheels = model.mirrored ? ["RF", "LR", "LF", "RR"] : ["LF", "RR", "RF", "LR"];
    // Only the outlets of a master tell which diagonal is circuit 1, so a mirrored one needs them named here too.
    const named = model.mirrored ? ["LF", "RR", "RF", "LR"] : wheels;
    parts.push(["B distribution-block @valve", port("B", "<", "I1", "1"), port("B", "<", "I2", "2"), ...named.map((wheel, index) => port("B", ">", `O${wheel}`, `${index < 2 ? 1 : 2} ${wheel}`)), ...extras(context, "B")].join(" | "));
    valves.push("B");
  }
  const one = (name: string, circuit: string, words: string) => `${name} proportioning-valve @valve | <IN ${circuit} ${threadOf(name, "IN")} | >OUT ${circuit} ${threadOf(name, "OUT")} | IN>OUT ${words}`;
  if (model.residualPair) {
    parts.push(one("RV", "", `residual holds=${rightResidual(model.rear)}`));
    valves.push("RV", "RV");
  }
  const CUT = "proportioning split=350 slope=0.4";
  if (model.pair === "twins") parts.push(one("PVX", "", CUT));
  if (model.pair === "rows" || model.pair === "ports") parts.push(one("PVX", model.pair === "ports" ? "1" : "", CUT), one("PVY", model.pair === "ports" ? "2" : "", CUT));
  if (model.pair === "one body") parts.push(["PVX combination-valve @valve", port("PVX", "<", "I1", "1"), port("PVX", "<", "I2", "2"), port("PVX", ">", "R1", "1"), port("PVX", ">", "R2", "2"), `I1>R1 ${CUT}`, `I2>R2 ${CUT}`].join(" | "));
  valves.push(...{ none: [], twins: ["PVX", "PVX"], rows: ["PVX@1", "PVY@2"], ports: ["PVX", "PVY"], "one body": ["PVX"] }[model.pair]);
  if (!model.body && model.outlets === "one") addTee(context, "T1", "valve", 2);
}

function addTee({ threadOf, parts, valves }: Context, name: string, place: string, times = 1, inlet?: string): void {
  parts.push(`${name} tee @${place} | <IN ${inlet ?? threadOf(name, "IN")} | >O1 ${threadOf(name, "O1")} | >O2 ${threadOf(name, "O2")}`);
  for (let count = 0; count < times; count++) valves.push(name);
}

function addRearEnd(context: Context): void {
  const { model, threadOf, parts } = context;
  const held = `expanders=${model.expanders ? "yes" : "no"} parking=yes`;
  const end = LINE_THREADS[model.threads[0] ?? 0] ?? "3/8-24";
  if (model.rearEnd === "two hoses") {
    parts.push(`HRW hose @rear | <IN ${threadOf("HRW", "IN")} | >OUT ${end} male`, `BR ${model.rear} ${held} | <IN ${end}`);
    if (model.split === "front/rear") addTee(context, "T2", "frame-mid");
    return;
  }
  parts.push(`BR ${model.rear} ${held} | <IN ${threadOf("BR", "IN")}`);
  const outlets = model.rearEnd === "hose and tee" ? [`>OUT ${end} male`] : [`>OL ${threadOf("HRX", "OL")} LR`, `>OR ${threadOf("HRX", "OR")} RR`];
  parts.push([`HRX hose @rear-hose | <IN ${threadOf("HRX", "IN")}`, ...outlets].join(" | "));
  if (model.rearEnd === "hose and tee") addTee(context, "T3", "axle-tee", 1, end);
}

/** Front hoses and brakes; where no block parts the fronts, tees do. */
function addFronts(context: Context): void {
  const { model, threadOf, parts } = context;
  const direct = DIRECT_THREADS[(model.threads[1] ?? 0) % DIRECT_THREADS.length] ?? "7/16-20 banjo";
  const out = threadOf("HFX", "OUT");
  parts.push(`HFX hose @front | <IN ${threadOf("HFX", "IN")} | >OUT ${/banjo/.test(out) ? out : direct}`, `BF ${model.front} expanders=${model.expanders ? "yes" : "no"} parking=no | <IN ${direct}`);
  if (model.split === "front/rear" && !model.body && model.outlets === "one") addTee(context, "T4", "valve");
  if (model.split === "single" && !model.body) addTee(context, "T5", "valve", 2);
}
