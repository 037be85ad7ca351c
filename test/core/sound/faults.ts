/**
 * Known faults, each of which turns a sound car into one that must raise exactly its code. What else may follow from a fault is listed with it.
 * A fault answers undefined on a car it cannot befall.
 */
import type { FindingCode } from "../../../src/core/finding";
import { ADAPTERS, LAMP_SWITCH, table } from "../workshop";
import type { Model, Valve } from "./model";
import { render, type Rendered, type Spoiling } from "./render";

export interface Fault {
  readonly name: string;
  readonly code: FindingCode;
  /** Codes above a note that follow from the same cause on some cars. */
  readonly mayFollow?: readonly FindingCode[];
  readonly befalls: (model: Model) => Rendered | undefined;
}

const HOLD_OFF = "ZH hold-off-valve @valve | <IN 3/8-24 | >OUT 3/8-24 | IN>OUT hold-off opens=80";
const CUT = "ZP proportioning-valve @valve | <IN 3/8-24 | >OUT 3/8-24 | IN>OUT proportioning split=350 slope=0.4";
const HELD = "ZR residual-valve @valve | <IN 3/8-24 | >OUT 3/8-24 | IN>OUT residual holds=10";
const tenPsi: Valve = { does: "residual", holds: 10, saidBy: "row", place: "valve" };

const onAxles = (model: Model): boolean => model.split === "front/rear";
/** One outlet of the master feeds both fronts, so that a valve may stand before they part. */
const oneFrontLine = (model: Model): boolean => onAxles(model) && model.outlets === "one";
const proportioned = (model: Model): boolean => model.body?.proportioning === true || [...model.rearBefore, ...model.rearBehind].some(({ does }) => /proportioning|limiting/.test(does));
const heldOff = (model: Model): boolean => model.body?.holdOff === true || model.frontLine.some(({ does }) => does === "hold-off");
const withoutResiduals = (valves: readonly Valve[]): Valve[] => valves.filter(({ does }) => does !== "residual");
const spoiled = (applies: (model: Model) => boolean, spoiling: Spoiling | ((model: Model) => Spoiling)) => (model: Model): Rendered | undefined =>
  applies(model) ? render(model, typeof spoiling === "function" ? spoiling(model) : spoiling) : undefined;
const altered = (applies: (model: Model) => boolean, change: (model: Model) => Partial<Model>, spoiling: Spoiling = {}) => (model: Model): Rendered | undefined =>
  applies(model) ? render({ ...model, ...change(model) }, spoiling) : undefined;

/** The inlet that the second line from the master leads to, told to be joined to the first outlet, by Joins. */
function crossed(model: Model): Rendered | undefined {
  const first = render(model).rearInlets[0]?.split(" ");
  return oneFrontLine(model) && model.body && first ? render(model, { joins: [`M | F | ${first.join(" | ")}`] }) : undefined;
}

/** The first valve of the rear line, if it is one with a direction, found on its outlet. */
function reversed(model: Model): Rendered | undefined {
  const [first] = model.rearBefore;
  const [inlet] = render(model).rearInlets;
  return onAxles(model) && first && first.does !== "union" && inlet ? render(model, { joins: [`M | R | ${inlet.split(" ")[0]} | OUT`] }) : undefined;
}

/** The line to the rear, found where it belongs and flared singly. Only on a 45° seat is the flare itself all that is wrong. */
function singleFlared(model: Model): Rendered | undefined {
  const car = render(model);
  const [inlet] = car.rearInlets;
  const ports = /bubble/.test([car.shop.parts?.find((part) => part.startsWith("M ")), car.shop.parts?.find((part) => part.startsWith(`${inlet?.split(/[ @]/)[0]} `))].join());
  return onAxles(model) && inlet && !ports ? render(model, { joins: [`M | R | ${inlet.split(" ").join(" | ")} | | single 45°`], cells: { Material: "stainless" } }) : undefined;
}

/** The switch that every car has turned into a part that is none. */
const NO_SWITCH = `${LAMP_SWITCH} union @valve | <A 3/8-24 plugged | >B 3/8-24 plugged`;

function withoutParkingBrake(model: Model): Rendered {
  const rear = render(model).shop.parts?.find((part) => part.startsWith("BR ")) ?? "";
  return render(model, { parts: [rear.replace("parking=yes", "parking=no")], cells: { "Driveline parking brake": "no" } });
}

/** A front hose's inlet is on every car, behind a line that is joined to it at each front wheel. */
const HOSE = "HFX IN";
const always = (): boolean => true;
const LONG_WAY = table(ADAPTERS, ...["3/4-16 | 5/8-18", "5/8-18 | 9/16-20", "9/16-20 | 3/8-24"].map((pair, index) => {
  const [a, b] = pair.split(" | ");
  return `AD-${index} | ${a} | inverted-flare-45 | male | ${b} | inverted-flare-45 | female | 5`;
}));
// Nominal sizes within 0.5 mm and pitches within 25 % of one another: the near misses of the design, and 3/8-24 beside M10x1.
const NEAR: Readonly<Record<string, string>> = { "7/16-20": "7/16-24", "M10x1": "3/8-24", "3/8-24": "M10x1" };
const directThread = (model: Model): string => /\| <IN (\S+) banjo/.exec(render(model).shop.parts?.find((part) => part.startsWith("BF ")) ?? "")?.[1] ?? "";

export const faults: readonly Fault[] = [
  { name: "a second hold-off valve", code: "metering-doubled", befalls: spoiled((model) => oneFrontLine(model) && heldOff(model), { before: ["ZH@front"], parts: [HOLD_OFF] }) },
  { name: "a hold-off valve in the rear line", code: "metering-on-rear", befalls: spoiled(onAxles, { before: ["ZH@rear"], parts: [HOLD_OFF] }) },
  { name: "a hold-off valve on an all-drum car", code: "metering-on-drums", befalls: spoiled((model) => oneFrontLine(model) && model.front === "drum", { before: ["ZH"], parts: [HOLD_OFF] }) },
  { name: "a second proportioning valve", code: "proportioning-doubled", befalls: spoiled((model) => onAxles(model) && proportioned(model), { valves: ["ZP"], parts: [CUT] }) },
  { name: "one of a pair left out", code: "proportioning-one-sided", befalls: altered((model) => model.pair === "rows", () => ({ pair: "none" }), { valves: ["ZP@2"], parts: [CUT] }) },
  { name: "a proportioning valve in the front line", code: "proportioning-on-front", befalls: spoiled(oneFrontLine, { before: ["ZP@front"], parts: [CUT] }) },
  { name: "a proportioning valve before the block of a single circuit", code: "proportioning-upstream-of-both", befalls: altered((model) => model.split === "single" && model.body !== undefined, (model) => ({ rearBehind: model.rearBehind.filter(({ does }) => does === "residual") }), { before: ["ZP"], parts: [CUT] }) },
  { name: "a drum residual in a disc line", code: "residual-on-disc", befalls: altered((model) => oneFrontLine(model) && model.front === "disc", (model) => ({ builtIn: model.builtIn.rear === undefined ? {} : { rear: model.builtIn.rear }, frontLine: [tenPsi, ...withoutResiduals(model.frontLine)] })) },
  { name: "one drum residual for discs and drums", code: "residual-shared", befalls: altered((model) => model.split === "single" && model.body !== undefined && model.front !== model.rear, (model) => ({ rearBehind: withoutResiduals(model.rearBehind) }), { before: ["ZR"], parts: [HELD] }) },
  { name: "a drum master on a disc line", code: "drum-master-on-disc", befalls: altered((model) => onAxles(model) && model.front === "disc", (model) => ({ builtIn: { ...model.builtIn, front: 10 }, frontLine: withoutResiduals(model.frontLine) })) },
  { name: "a residual valve behind one built in", code: "residual-doubled", befalls: spoiled((model) => onAxles(model) && model.builtIn.rear === 10, { before: ["ZR@rear"], parts: [HELD] }) },
  { name: "drums with neither residual nor expanders", code: "residual-missing-drum", befalls: altered((model) => model.rear === "drum", (model) => ({ builtIn: {}, rearBefore: withoutResiduals(model.rearBefore), rearBehind: withoutResiduals(model.rearBehind), frontLine: withoutResiduals(model.frontLine), residualPair: false, expanders: false })) },
  { name: "a port of a thread that nothing takes", code: "thread-mismatch", befalls: spoiled(always, { threads: { [HOSE]: "3/4-16" } }) },
  { name: "a seat that no nut of the thread has", code: "seat-mismatch", befalls: spoiled(always, { threads: { [HOSE]: "3/8-24 bubble-iso" } }) },
  { name: "a port whose nut is bored for another tube", code: "tube-nut-mismatch", befalls: spoiled(always, { threads: { [HOSE]: "5/8-18" } }) },
  { name: "a hose end that starts in the caliper's thread", code: "thread-near-miss", befalls: spoiled(always, (model) => ({ threads: { "HFX OUT": `${NEAR[directThread(model)]} banjo` } })) },
  { name: "a tee that no line needs", code: "port-left-open", befalls: spoiled(always, { valves: ["ZT"], parts: ["ZT tee @valve | <IN 3/8-24 | >O1 3/8-24 | >O2 3/8-24"] }) },
  { name: "a switch port left open", code: "switch-port-open", befalls: altered((model) => model.body !== undefined, ({ body }) => ({ body: body && { ...body, switchPort: "open" } })) },
  { name: "no tee where one is needed", code: "outlet-shortage", befalls: (model) => (/(^|; )T\d/.test(render(model).cells["Valves"] ?? "") ? render(model, { withoutTees: true, parts: ["TX tee @valve price=1 | <IN 3/8-24 | >O1 3/8-24 | >O2 3/8-24"] }) : undefined) },
  { name: "an outlet of the master found plugged", code: "circuit-unfed", befalls: spoiled(onAxles, { joins: ["M | R | | | | | yes"] }), mayFollow: ["port-left-open"] },
  { name: "the front outlet found on the rear inlet", code: "outlets-crossed", befalls: crossed },
  { name: "a valve found fed through its outlet", code: "flow-reversed", befalls: reversed },
  { name: "three adapters on one end", code: "joint-count", befalls: spoiled(always, { threads: { [HOSE]: "3/4-16" }, more: [LONG_WAY] }) },
  { name: "one circuit in the rule year", code: "single-circuit", befalls: altered((model) => model.split === "single", () => ({ year: 1968 })) },
  { name: "plain copper", code: "material-copper", befalls: spoiled(always, { cells: { Material: "copper" } }) },
  { name: "silicone with glycol", code: "fluid-mixed", befalls: spoiled(always, { cells: { Fluid: "DOT 5; DOT 3" } }) },
  { name: "a compression port", code: "compression-joint", befalls: spoiled(always, { threads: { [HOSE]: "3/8-24 compression" } }) },
  { name: "a single flare found on steel", code: "flare-single", befalls: singleFlared },
  { name: "no switch on two circuits", code: "warning-missing", befalls: spoiled(({ split, body }) => split !== "single" && body?.switchPort !== "switch", { parts: [NO_SWITCH] }) },
  { name: "no parking brake anywhere", code: "parking-brake-lost", befalls: withoutParkingBrake },
  { name: "no material", code: "data-missing", befalls: spoiled(always, { cells: { Material: "" } }) },
  { name: "no list of valves", code: "data-missing", befalls: spoiled(always, { cells: { Valves: "?" } }) },
  { name: "no list of hoses", code: "data-missing", befalls: spoiled(always, { cells: { Hoses: "" } }) },
  { name: "a valve that Components lacks", code: "unknown-part", befalls: spoiled(always, { valves: ["ZZ-9"] }) },
  { name: "a platform that Platforms lacks", code: "unknown-platform", befalls: spoiled((model) => model.split !== "diagonal", { cells: { Platform: "ZZ" } }) },
];
