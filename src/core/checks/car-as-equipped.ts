/** Rules about what the car is equipped with: hoses, switches, parking brake, anti-lock unit, material, fluid. */
import { isBeyondRearHose, portKey, sayCircuit, sayJoint, sayPort, theCircuit, type Instance, type Joint, type WheelPath } from "../assembly";
import { lookUp, nameKey } from "../catalogue";
import type { Component, ComponentKind } from "../component";
import { finding, type Finding } from "../finding";
import { isOfYear, valvesKey } from "../possible-sets";
import type { Question } from "../question";
import { sayTube, tubeKey } from "../tube";
import { isFromRuleYear } from "./rule-year";
import { brakeKind, circuitIsOpen, holdOffOn, oncePerCause, pathsTo, proportioningOn, sayWheels, type CarFacts, type Rule } from "./rule";

/** A hard line that meets a part which steers or moves with the axle breaks; a joint that Joins states is taken as meant. */
export const hoseMissing: Rule = (facts) =>
  (["front", "rear"] as const).flatMap((axle): Finding[] => {
    const bare = barePaths(facts, axle);
    if (bare.length === 0) return [];
    const moves = axle === "front" ? "steers" : "moves with the axle";
    return [finding("hose-missing", { place: sayWheels(bare), seen: `the hard line runs straight to ${sayWheels(bare)}, which ${moves}` })];
  });

const barePaths = (facts: CarFacts, axle: "front" | "rear"): WheelPath[] => pathsTo(facts, axle).filter((path) => !hasHose(path) && !ontoMovingPart(path)?.found);

/**
 * Ports that a hard line would meet for want of a hose: what does not fit there has the missing hose for its cause.
 * None on a car that is to go without its hoses, with a reason: then the line itself must fit.
 */
export function portsWithoutHose(facts: CarFacts): ReadonlySet<string> {
  if (facts.assembly.car.accepted.has("hose-missing")) return new Set();
  const joints = (["front", "rear"] as const).flatMap((axle) => barePaths(facts, axle).flatMap((path) => ontoMovingPart(path) ?? []));
  return new Set(joints.map(({ to }) => portKey(to)));
}

const hasHose = ({ through }: WheelPath): boolean => through.some(({ component }) => component.kind === "hose");

/** The joint at which the line leaves the frame: onto the axle's own parts, or onto the wheel's. */
const ontoMovingPart = ({ joints }: WheelPath): Joint | undefined => joints.find(({ to }) => to.instance.wheel !== undefined || isBeyondRearHose(to.instance.place));

/** Compression ports in the lines, one finding a part; and adapters that would bring one in. */
export const compressionJoint: Rule = ({ assembly, runs }) => {
  const ports = assembly.joints.flatMap(({ from, to }) => [from, to]).filter(({ port }) => port.seat === "compression");
  const adapted = runs.flatMap(({ a, b }) => [a, b]).filter(({ at, fitting }) => at.port.seat !== "compression" && fitting?.fits && fitting.adapters.some(({ joins, offers }) => joins.seat === "compression" || offers.seat === "compression"));
  const all = [...ports, ...adapted.map(({ at }) => at)];
  return oncePerCause(all, ({ instance }) => instance.label).map(({ cause, items }) => {
    const place = [...new Set(items.map(sayPort))].join(", ");
    return finding("compression-joint", { place, seen: `${cause} is joined by compression (${place})` });
  });
};

/** The differential-pressure or level switch that lights the lamp, asked of cars with two circuits. */
export const warningMissing: Rule = (facts) => {
  if (facts.assembly.circuits.length < 2 || circuitIsOpen(facts)) return [];
  if (facts.assembly.instances.some(({ component }) => warns(component))) return [];
  const severity = isFromRuleYear(facts) === false ? "note" : "decide";
  return [finding("warning-missing", { place: "both circuits", seen: "no differential-pressure switch and no level switch is listed", severity })];
};

/** A switch of its own, or a wire to a body that both circuits meet in and that has no port for a separate one: then the switch is built in. */
function warns({ kind, senses, wire, ports }: Component): boolean {
  if (kind === "switch") return senses !== "stop-lamp";
  return wire === true && BODIES_WITH_SWITCH.has(kind) && !ports.some(({ use }) => use === "switch");
}

const BODIES_WITH_SWITCH: ReadonlySet<ComponentKind> = new Set(["master", "distribution-block", "combination-valve"]);

/**
 * The valves with which the platform left the works in the car's years had a hydraulic stop-lamp switch, and nothing on the car has one now.
 * A car with the valves of a set that has none is as it was made.
 */
export const stopLampLost: Rule = (facts) => {
  const { catalogue, assembly } = facts;
  const { car } = assembly;
  if (circuitIsOpen(facts) || !car.valves.known || assembly.instances.some(({ component }) => hasStopLampPort(component) || component.kind === "switch")) return [];
  const own = valvesKey(catalogue, car.valves.value.map(({ component }) => component));
  const sets = catalogue.lineSets.filter((set) => car.platform !== undefined && nameKey(set.platform) === nameKey(car.platform) && isOfYear(set, car.year) && set.valves);
  if (sets.some(({ valves = [] }) => valvesKey(catalogue, valves) === own)) return [];
  const had = sets.flatMap(({ valves = [] }) => valves).flatMap((name) => lookUp(catalogue.components, name) ?? []).find(hasStopLampPort);
  if (!had) return [];
  return [finding("stop-lamp-lost", { place: had.name, seen: `the platform's ${had.name} carried the stop-lamp switch; no part listed now has a port for one, and no switch is listed` })];
};

/** A switch port on a part with one way in, or a master with one way out, can only be for the stop lamps: one that compares needs two circuits. */
function hasStopLampPort({ ports }: Component): boolean {
  const lines = ports.filter(({ use }) => use === "line");
  const inlets = lines.filter(({ flow }) => flow === "in").length;
  return (inlets === 1 || (inlets === 0 && lines.length === 1)) && ports.some(({ use }) => use === "switch");
}

export const parkingBrakeLost: Rule = (facts) => {
  const { brakes, driveline, unstated } = parkingBrakes(facts);
  if (unstated || driveline !== false || brakes.length === 0 || brakes.some(({ yes }) => yes !== false)) return [];
  const names = brakes.map(({ name }) => name);
  return [finding("parking-brake-lost", { place: names.join(", "), seen: `neither ${names.join(" nor ")} nor the driveline has a parking brake` })];
};

function parkingBrakes({ assembly, catalogue }: CarFacts) {
  const brakes = [...new Set(assembly.instances.filter((one) => brakeKind(one)).map(({ component }) => component))].map(({ name, wheelBrake }) => ({ name, yes: wheelBrake?.parkingBrake }));
  const driveline = assembly.car.platformFigures.drivelineParkingBrake ?? lookUp(catalogue.platforms, assembly.car.platform)?.figures.drivelineParkingBrake;
  /** A wheel whose brake is not known may have the one that holds the car. */
  const unstated = assembly.instances.some(({ unnamed, wheel, component }) => unnamed && wheel !== undefined && component.kind !== "hose");
  return { brakes, driveline, unstated };
}

/** Asked only while no brake and no driveline is known to have one. */
export function parkingBrakeQuestions(facts: CarFacts): Question[] {
  const { brakes, driveline } = parkingBrakes(facts);
  if (driveline === true || brakes.length === 0 || brakes.some(({ yes }) => yes === true)) return [];
  const why = "without one the car cannot be left standing, and it will not pass inspection";
  const silent = brakes.filter(({ yes }) => yes === undefined).map(({ name }): Question => ({
    table: "WheelBrakes", column: "Parking brake", subject: name, blocks: false, ask: `Does ${name} have a parking brake?`, why,
  }));
  const platform = facts.assembly.car.platform ?? facts.assembly.car.name;
  if (silent.length > 0 || driveline === false) return silent;
  return [{ table: "Platforms", column: "Driveline parking brake", subject: platform, blocks: false, ask: `Does ${platform} have a parking brake on the driveline?`, why }];
}

export const antiLockPresent: Rule = (facts) => {
  const unit = facts.assembly.instances.find(isAntiLock);
  const steps = facts.paths.flatMap((path) => [...holdOffOn(path), ...proportioningOn(facts, path)]).filter(({ instance }) => !isAntiLock(instance));
  if (!unit || steps.length === 0) return [];
  const valves = [...new Set(steps.map(({ instance }) => instance.label))].join(" and ");
  return [finding("anti-lock-present", { place: valves, seen: `${unit.label} stands on this car with ${valves}` })];
};

const isAntiLock = ({ component }: Instance): boolean => component.kind === "anti-lock-unit";

export const bleedTool: Rule = (facts) => {
  if (facts.catalogue.settings.bleeding !== "pressure") return [];
  const holds = facts.paths.flatMap(holdOffOn);
  return oncePerCause(holds, ({ instance }) => instance.label).map(({ cause }) => finding("bleed-tool", { place: cause, seen: `${cause} shuts the front line while pressure bleeding` }));
};

export const copperTube: Rule = ({ assembly }) =>
  [assembly.car.material, ...assembly.car.otherMaterials].includes("copper") ? [finding("material-copper", { place: "Cars: Material", seen: "the row names plain copper" })] : [];

export const mixedMaterials: Rule = ({ assembly }) =>
  assembly.car.otherMaterials.length === 0 ? [] : [finding("material-mixed", { place: "Cars: Material", seen: `the row names ${[assembly.car.material, ...assembly.car.otherMaterials].join(" and ")}` })];

/** Silicone fluid (DOT 5) never goes with glycol fluid, nor through an anti-lock unit. */
export const mixedFluids: Rule = ({ assembly }) => {
  const { fluids } = assembly.car;
  const silicone = fluids.includes("DOT 5");
  const glycol = fluids.filter((fluid) => fluid !== "DOT 5");
  if (silicone && glycol.length > 0) return [finding("fluid-mixed", { place: "Cars: Fluid", seen: `the row names DOT 5 silicone with ${glycol.join(" and ")}` })];
  const unit = assembly.instances.find(isAntiLock);
  return silicone && unit ? [finding("fluid-mixed", { place: unit.label, seen: `DOT 5 silicone is to go through ${unit.label}` })] : [];
};

/** Pressure is the same in both sizes; only flow differs. */
export const tubeReduced: Rule = ({ assembly, runs }) =>
  assembly.circuits.flatMap(({ name }) => {
    const sizes = new Map(runs.flatMap(({ circuit, tube }) => (circuit === name && tube !== undefined ? [[tubeKey(tube), sayTube(tube)] as const] : [])));
    return sizes.size < 2 ? [] : [finding("tube-reduced", { place: sayCircuit(name), seen: `${theCircuit(name)} runs in ${[...sizes.values()].join(" and ")}` })];
  });

/** A single 45° flare on steel; a 37° flare is made single and is sound. Needs the flare as found. */
export const singleFlare: Rule = ({ assembly }) => {
  const { material } = assembly.car;
  if (material !== "mild steel" && material !== "stainless") return [];
  return assembly.joints.filter(({ found, from, to }) => isSingle(found?.flare) && ![from, to].every(({ port }) => port.seat === "flare-37")).map((joint) =>
    finding("flare-single", { place: sayJoint(joint), seen: `a single flare was found at ${sayJoint(joint)}` }));
};

export const isSingle = (flare: string | undefined): boolean => /single/i.test(flare ?? "") && !(flare ?? "").includes("37");

/** The smaller chamber feeds the discs and the larger the drums, as found on the car. */
export const reservoirSwapped: Rule = (facts) => {
  const outlets = [...new Map(facts.paths.map((path) => [path.outlet.port.name, path.outlet])).values()];
  const fed = (outlet: string, kind: "disc" | "drum") => facts.paths.some((path) => path.outlet.port.name === outlet && brakeKind(path.brake) === kind);
  const discs = outlets.find(({ port }) => fed(port.name, "disc") && !fed(port.name, "drum"));
  const drums = outlets.find(({ port }) => fed(port.name, "drum") && !fed(port.name, "disc"));
  const [small, large] = [discs?.port.reservoir, drums?.port.reservoir];
  const found = facts.assembly.joints.some((joint) => joint.found && [discs?.port, drums?.port].includes(joint.from.port));
  if (!discs || small === undefined || large === undefined || small >= large || !found) return [];
  return [finding("reservoir-swapped", { place: `${discs.instance.label} ${discs.port.name}`, seen: `the smaller chamber, at ${discs.port.name}, feeds the discs` })];
};
