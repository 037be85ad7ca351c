/** A car that is sound by construction, as a few choices; render.ts turns it into tables, faults.ts spoils it in one known way. */
import fc from "fast-check";

export type Kind = "disc" | "drum";
export type Duty = "residual" | "hold-off" | "proportioning" | "adjustable-proportioning" | "limiting" | "union";
/** How the shop says which line a valve is in. */
export type SaidBy = "ports" | "row" | "duty";

export interface Valve {
  readonly does: Duty;
  /** Of a residual, in psi. */
  readonly holds?: number;
  readonly saidBy: SaidBy;
  readonly place: string;
}

export interface Body {
  readonly holdOff: boolean;
  readonly proportioning: boolean;
  readonly pluggedPort: boolean;
  readonly switchPort: "none" | "switch" | "plugged" | "open";
}

export interface Model {
  readonly split: "front/rear" | "diagonal" | "single";
  readonly front: Kind;
  readonly rear: Kind;
  readonly rearEnd: "hose and tee" | "hose with two outlets" | "two hoses";
  /** Outlets of the master: one a circuit, or one a wheel where the circuit allows. */
  readonly outlets: "one" | "each wheel";
  readonly builtIn: { readonly front?: number; readonly rear?: number };
  readonly body: Body | undefined;
  readonly frontLine: readonly Valve[];
  /** Before and behind the body. */
  readonly rearBefore: readonly Valve[];
  readonly rearBehind: readonly Valve[];
  /** Of a diagonal split: how its two proportioning valves are listed, if it has them. */
  readonly pair: "none" | "twins" | "rows" | "ports" | "one body";
  readonly residualPair: boolean;
  readonly mirrored: boolean;
  readonly holdOffListedLate: boolean;
  readonly teesFirst: boolean;
  /** Hoses at two wheels are listed once, twice, or with their wheels. */
  readonly hosesListed: "once" | "twice" | "by wheel";
  readonly expanders: boolean;
  readonly year: number;
  readonly material: string;
  /** Decides the thread of each port in turn. */
  readonly threads: readonly number[];
}

const kinds = fc.constantFrom<readonly [Kind, Kind]>(["disc", "drum"], ["disc", "disc"], ["drum", "drum"]);
const yes = fc.boolean();
const places = fc.constantFrom("valve", "frame-mid");
const raw = fc.record({
  split: fc.constantFrom<Model["split"]>("front/rear", "front/rear", "diagonal", "single"),
  kinds, hasBody: yes, holdOff: fc.constantFrom("none", "body", "valve"), proportioning: fc.constantFrom("none", "body", "before", "behind"),
  proportioningKind: fc.constantFrom<Duty>("proportioning", "adjustable-proportioning", "limiting"),
  residual: fc.record({ front: fc.constantFrom("none", "built in", "valve"), rear: fc.constantFrom("none", "built in", "before", "behind") }),
  union: fc.constantFrom("none", "before", "behind"), saidBy: fc.array(fc.constantFrom<SaidBy>("ports", "row", "duty"), { minLength: 6, maxLength: 6 }), places: fc.array(places, { minLength: 6, maxLength: 6 }),
  rearEnd: fc.constantFrom<Model["rearEnd"]>("hose and tee", "hose with two outlets", "two hoses"), outlets: fc.constantFrom<Model["outlets"]>("one", "each wheel"),
  pluggedPort: yes, switchPort: fc.constantFrom<Body["switchPort"]>("none", "switch", "plugged"), pair: fc.constantFrom<Model["pair"]>("none", "twins", "rows", "ports", "one body"),
  residualPair: yes, mirrored: yes, holdOffListedLate: yes, teesFirst: yes, hosesListed: fc.constantFrom<Model["hosesListed"]>("once", "twice", "by wheel"), expanders: yes, late: fc.nat({ max: 7 }), material: fc.constantFrom("mild steel", "stainless", "copper-nickel"),
  threads: fc.array(fc.nat({ max: 6 }), { minLength: 8, maxLength: 40 }),
});
type Raw = typeof raw extends fc.Arbitrary<infer T> ? T : never;

/** The pressure a residual of the right type holds: about 2 psi for discs, 10 for drums (common practice, no source). */
export const rightResidual = (kind: Kind): number => (kind === "disc" ? 2 : 10);

export const soundCars: fc.Arbitrary<Model> = raw.map((choices) => (choices.split === "front/rear" ? frontRear(choices) : choices.split === "diagonal" ? diagonalSplit(choices) : singleCircuit(choices)));

function shared({ kinds: [front, rear], rearEnd, outlets, residualPair, mirrored, holdOffListedLate, teesFirst, hosesListed, material, threads }: Raw) {
  const lines = { builtIn: {}, frontLine: [], rearBefore: [], rearBehind: [], pair: "none" as const };
  return { ...lines, front, rear, rearEnd, outlets, residualPair, mirrored, holdOffListedLate, teesFirst, hosesListed, material, threads };
}

const bodyOf = (choices: Raw, holdOff: boolean, proportioning: boolean): Body | undefined =>
  choices.hasBody ? { holdOff, proportioning, pluggedPort: choices.pluggedPort, switchPort: choices.switchPort } : undefined;

function frontRear(choices: Raw): Model {
  const [front, rear] = choices.kinds;
  const valve = (index: number, does: Duty, place = choices.places[index] ?? "valve"): Valve => ({ does, saidBy: told(choices.saidBy[index] ?? "ports", does), place });
  const residual = (index: number, kind: Kind): Valve => ({ ...valve(index, "residual"), holds: rightResidual(kind), saidBy: choices.saidBy[index] === "ports" ? "ports" : "row" });
  const wantsHoldOff = front === "disc" && choices.holdOff !== "none";
  const cutIn = choices.proportioning === "body" && !choices.hasBody ? "behind" : choices.proportioning;
  const cut = (where: string): Valve[] => (cutIn === where ? [valve(2, choices.proportioningKind)] : []);
  const rearResidual = (where: string): Valve[] => (choices.residual.rear === where ? [residual(3, rear)] : []);
  const union = (where: string): Valve[] => (choices.union === where ? [{ ...valve(4, "union"), saidBy: choices.saidBy[4] === "ports" ? "ports" : "row" }] : []);
  const held = choices.residual.rear !== "none";
  return {
    ...shared(choices), split: "front/rear", year: 1968 + choices.late,
    builtIn: { ...(choices.residual.front === "built in" ? { front: rightResidual(front) } : {}), ...(choices.residual.rear === "built in" ? { rear: rightResidual(rear) } : {}) },
    body: bodyOf(choices, wantsHoldOff && choices.holdOff === "body", cutIn === "body"),
    frontLine: [...(choices.residual.front === "valve" ? [residual(0, front)] : []), ...(wantsHoldOff && (choices.holdOff === "valve" || !choices.hasBody) ? [valve(1, "hold-off")] : [])],
    rearBefore: [...rearResidual("before"), ...union("before"), ...cut("before")],
    rearBehind: [...(cutIn === "before" || cutIn === "body" ? [] : rearResidual("behind")), ...union("behind"), ...cut("behind")],
    outlets: choices.hasBody || choices.residual.front === "valve" || wantsHoldOff ? "one" : choices.outlets,
    expanders: choices.expanders || !(held && !(choices.residual.rear === "behind" && (cutIn === "before" || cutIn === "body"))) || (front === "drum" && choices.residual.front === "none"),
  };
}

/** Duty tells the line of a hold-off or a proportioning valve; of anything else the row or the ports must. */
const told = (saidBy: SaidBy, does: Duty): SaidBy => (saidBy === "duty" && (does === "residual" || does === "union") ? "row" : saidBy);

function diagonalSplit(choices: Raw): Model {
  const parted = choices.hasBody || choices.outlets === "each wheel";
  const residualPair = choices.residualPair && parted && choices.kinds.join() === "disc,drum";
  return {
    ...shared(choices), split: "diagonal", year: 1974 + (choices.late % 6), rearEnd: "two hoses",
    body: bodyOf(choices, false, false), outlets: choices.hasBody ? "one" : choices.outlets, pair: choices.pair,
    residualPair, expanders: choices.expanders || !residualPair,
  };
}

function singleCircuit(choices: Raw): Model {
  const [front, rear] = choices.kinds;
  const valve = (does: Duty): Valve => ({ does, saidBy: "row", place: "frame-mid" });
  const before: Valve[] = front === rear && choices.residual.rear === "before" ? [{ ...valve("residual"), place: "valve", holds: rightResidual(front), saidBy: "ports" }] : [];
  const behind: Valve[] = front !== rear && choices.residual.rear === "behind" ? [{ ...valve("residual"), holds: rightResidual(rear) }] : [];
  return {
    ...shared(choices), split: "single", year: 1960 + choices.late, outlets: "one", rearEnd: choices.rearEnd === "two hoses" ? "hose and tee" : choices.rearEnd,
    body: bodyOf(choices, false, false), rearBefore: before, rearBehind: [...behind, ...(choices.proportioning === "behind" ? [valve(choices.proportioningKind)] : [])],
    expanders: choices.expanders || front === "drum" ? before.length === 0 || choices.expanders : behind.length === 0,
  };
}
