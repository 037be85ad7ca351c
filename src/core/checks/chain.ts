/** Rules about the chain of functions between the master and each wheel. */
import type { PathStep, WheelPath } from "../assembly";
import { axleOf, PROPORTIONING_NAMES } from "../component";
import { finding, type Finding } from "../finding";
import { sayResidual } from "../say-quantity";
import { axleKind, brakeKind, holdOffOn, isDrumResidual, labels, oncePerCause, pathsTo, proportioningOn, residualsOn, sayWheels, type CarFacts, type HeldPressure, type Rule } from "./rule";

const isFrontRear = ({ assembly }: CarFacts): boolean => assembly.circuits.some(({ name }) => name === "front");
const isDiagonal = ({ assembly }: CarFacts): boolean => assembly.circuits.some(({ name }) => name === "1");

/** Paths grouped by the parts that cause a finding, so that two wheels behind one pair of valves are one finding. */
const byParts = (paths: readonly WheelPath[], stepsOf: (path: WheelPath) => readonly PathStep[]) => oncePerCause(paths, (path) => labels(stepsOf(path)));

export const meteringDoubled: Rule = (facts) =>
  byParts(facts.paths.filter((path) => holdOffOn(path).length > 1), holdOffOn).map(({ cause, items }) =>
    finding("metering-doubled", { place: `${cause}, to ${sayWheels(items)}`, seen: `${holdOffOn(items[0] as WheelPath).length} hold-offs in a row (${cause})` }));

export const meteringOnRear: Rule = (facts) =>
  byParts(pathsTo(facts, "rear").filter((path) => holdOffOn(path).length > 0), holdOffOn).map(({ cause, items }) =>
    finding("metering-on-rear", { place: `${cause}, to ${sayWheels(items)}`, seen: `${cause} holds off the rear line` }));

export const meteringForNoDiscs: Rule = (facts) => {
  const [front, rear] = [axleKind(facts, "front"), axleKind(facts, "rear")];
  if (!front || front !== rear) return [];
  const paths = pathsTo(facts, "front").filter((path) => holdOffOn(path).length > 0);
  const code = front === "drum" ? "metering-on-drums" : "metering-on-four-discs";
  return byParts(paths, holdOffOn).map(({ cause, items }) =>
    finding(code, { place: `${cause}, to ${sayWheels(items)}`, seen: `${cause} holds off the fronts of a car with ${front}s all round` }));
};

export const meteringMissing: Rule = (facts) => {
  const fronts = pathsTo(facts, "front");
  if (!isFrontRear(facts) || axleKind(facts, "front") !== "disc" || axleKind(facts, "rear") !== "drum" || fronts.length === 0) return [];
  if (fronts.some((path) => path.unknown.length > 0 || holdOffOn(path).length > 0)) return [];
  const hadOne = madeWithHoldOff(facts);
  const seen = `no hold-off on the front discs${hadOne ? ", and the platform's own valves had one" : ""}`;
  return [finding("metering-missing", { place: "front circuit", seen, severity: hadOne ? "watch" : "note" })];
};

/** The platform's line sets say which valves its cars left the works with. */
function madeWithHoldOff({ catalogue, assembly }: CarFacts): boolean {
  const platform = assembly.car.platform?.trim().toLowerCase();
  const sets = catalogue.lineSets.filter((set) => set.platform.trim().toLowerCase() === platform && set.front === "disc" && set.rear !== "disc");
  const valves = sets.flatMap((set) => set.valves ?? []);
  return valves.some((name) => catalogue.components.get(name.trim().toLowerCase())?.passages.some(({ duties }) => duties?.some(({ does }) => does === "hold-off")));
}

export const proportioningDoubled: Rule = (facts) => {
  const stepsOf = (path: WheelPath) => proportioningOn(facts, path);
  return byParts(facts.paths.filter((path) => stepsOf(path).length > 1), stepsOf).map(({ cause, items }) =>
    finding("proportioning-doubled", { place: `${cause}, to ${sayWheels(items)}`, seen: `${stepsOf(items[0] as WheelPath).length} proportioning sections in a row (${cause})` }));
};

export const proportioningOneSided: Rule = (facts) => {
  if (!isDiagonal(facts)) return [];
  // A valve of unknown contents may stand on either wheel of its circuit, so nothing is said about that circuit.
  const open = facts.assembly.circuits.filter(({ wheels }) => facts.paths.some(({ wheel, unknown }) => unknown.length > 0 && wheels.includes(wheel)));
  const rears = pathsTo(facts, "rear").filter(({ wheel }) => !open.some(({ wheels }) => wheels.includes(wheel)));
  const [with_, without] = [rears.filter((path) => proportioningOn(facts, path).length > 0), rears.filter((path) => proportioningOn(facts, path).length === 0)];
  if (with_.length === 0 || without.length === 0) return [];
  return [finding("proportioning-one-sided", { place: sayWheels(without), seen: `${sayWheels(with_)} is proportioned and ${sayWheels(without)} is not` })];
};

/** Proportioning on the fronts: shared with the rears it is one cause, and that code hides the other. */
export const proportioningOnFront: Rule = (facts) => {
  const ids = (paths: readonly WheelPath[]) => new Set(paths.flatMap((path) => proportioningOn(facts, path).map(({ id }) => id)));
  const rear = ids(pathsTo(facts, "rear"));
  const steps = pathsTo(facts, "front").flatMap((path) => proportioningOn(facts, path).map((step) => ({ ...step, wheel: path.wheel })));
  return oncePerCause(steps, ({ instance, id }) => `${instance.label}|${rear.has(id)}`).map(({ items }): Finding => {
    const first = items[0] as (typeof steps)[number];
    const label = first.instance.label;
    if (rear.has(first.id)) return finding("proportioning-upstream-of-both", { place: label, seen: `${label} feeds both axles through one proportioning section` });
    return finding("proportioning-on-front", { place: `${label}, to ${[...new Set(items.map(({ wheel }) => wheel))].join(", ")}`, seen: `${label} proportions the front line` });
  });
};

interface OnWheel extends HeldPressure {
  readonly path: WheelPath;
}

const residualsByWheel = (facts: CarFacts): OnWheel[] => facts.paths.flatMap((path) => residualsOn(facts, path).map((residual) => ({ ...residual, path })));

const sayHeld = ({ catalogue }: CarFacts, { holds }: HeldPressure): string => (holds === undefined ? "an unknown pressure" : sayResidual(catalogue.settings, holds));

/** A drum residual that reaches a disc: built into the master, shared with drums, or on the disc line alone. One cause, one code; a master with two check valves is one cause. */
export const residualReachesDisc: Rule = (facts) => {
  const drumType = residualsByWheel(facts).filter((residual) => isDrumResidual(facts, residual));
  return oncePerCause(drumType, ({ part, label, builtIn }) => (builtIn ? `${part}, built in` : label)).flatMap(({ items }): Finding[] => {
    const discs = items.filter(({ path }) => brakeKind(path.brake) === "disc");
    const [first] = discs;
    if (!first) return [];
    if (first.builtIn) return [drumMaster(facts, first, discs)];
    const place = `${first.label}, to ${sayWheels(discs.map(({ path }) => path))}`;
    const shared = items.some(({ id, path }) => id === first.id && brakeKind(path.brake) === "drum");
    if (shared) return [finding("residual-shared", { place: first.label, seen: `${first.label} holds ${sayHeld(facts, first)} on discs and drums alike` })];
    return [finding("residual-on-disc", { place, seen: `${first.label} holds ${sayHeld(facts, first)} on a disc line` })];
  });
};

function drumMaster(facts: CarFacts, { part }: OnWheel, discs: readonly OnWheel[]): Finding {
  const outlets = [...new Set(discs.map(({ path }) => path.outlet.port.name))];
  const named = `${part} ${outlets.join(" and ")}`;
  const held = [...new Set(discs.map((one) => sayHeld(facts, one)))].join(" and ");
  const seen = outlets.length > 1 ? `outlets ${named} hold ${held} and feed discs` : `outlet ${named} holds ${held} and feeds discs`;
  return finding("drum-master-on-disc", { place: `${named}, to ${sayWheels(discs.map(({ path }) => path))}`, seen });
}

export const residualMissingOnDrum: Rule = (facts) => {
  const bare = facts.paths.filter((path) => brakeKind(path.brake) === "drum" && path.unknown.length === 0 && !residualsOn(facts, path).some((one) => isDrumResidual(facts, one) || one.holds === undefined));
  const open = bare.filter(({ brake }) => brake.component.wheelBrake?.cupExpanders === false);
  return oncePerCause(open, ({ wheel }) => axleOf(wheel)).map(({ items }) =>
    finding("residual-missing-drum", { place: sayWheels(items), seen: `no drum residual feeds ${sayWheels(items)} and the wheel cylinders have no cup expanders` }));
};

export const residualDoubled: Rule = (facts) => {
  const doubled = facts.paths.filter((path) => residualsOn(facts, path).length > 1);
  const say = (path: WheelPath) => residualsOn(facts, path).map(({ label }) => label).join(" and ");
  return oncePerCause(doubled, say).map(({ cause, items }) =>
    finding("residual-doubled", { place: `${cause}, to ${sayWheels(items)}`, seen: `${residualsOn(facts, items[0] as WheelPath).length} residuals in a row (${cause})` }));
};

export const residualBehindProportioning: Rule = (facts) => {
  const late = facts.paths.flatMap((path) => {
    const first = path.steps.findIndex(({ duty }) => PROPORTIONING_NAMES.has(duty.does));
    return first < 0 ? [] : path.steps.slice(first + 1).filter(({ duty }) => duty.does === "residual").map((step) => ({ step, path }));
  });
  return oncePerCause(late, ({ step }) => step.instance.label).map(({ cause, items }) =>
    finding("residual-order", { place: `${cause}, to ${sayWheels(items.map(({ path }) => path))}`, seen: `${cause} stands behind the proportioning` }));
};
