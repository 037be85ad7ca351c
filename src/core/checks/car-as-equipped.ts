/** Rules about what the car is equipped with: hoses, switches, parking brake, anti-lock unit, material, fluid. */
import { sayJoint, type WheelPath } from "../assembly";
import { lookUp } from "../catalogue";
import type { Component } from "../component";
import { finding, type Finding } from "../finding";
import type { Question } from "../question";
import { sayTube, tubeKey } from "../tube";
import { isFromRuleYear } from "./rule-year";
import { brakeKind, circuitIsOpen, holdOffOn, oncePerCause, pathsTo, proportioningOn, sayWheels, type CarFacts, type Rule } from "./rule";

/** A hard line that meets a part which steers or moves with the axle breaks; a joint that Joins states is taken as meant. */
export const hoseMissing: Rule = (facts) =>
  (["front", "rear"] as const).flatMap((axle): Finding[] => {
    const bare = pathsTo(facts, axle).filter((path) => !hasHose(path) && !path.joints.at(-1)?.found);
    if (bare.length === 0) return [];
    const moves = axle === "front" ? "steers" : "moves with the axle";
    return [finding("hose-missing", { place: sayWheels(bare), seen: `the hard line runs straight to ${sayWheels(bare)}, which ${moves}` })];
  });

const hasHose = ({ through }: WheelPath): boolean => through.some(({ component }) => component.kind === "hose");

export const compressionJoint: Rule = ({ assembly }) =>
  assembly.joints.filter(({ from, to }) => [from, to].some(({ port }) => port.seat === "compression")).map((joint) =>
    finding("compression-joint", { place: sayJoint(joint), seen: `${sayJoint(joint)} is a compression joint` }));

/** The differential-pressure or level switch that lights the lamp, asked of cars with two circuits. */
export const warningMissing: Rule = (facts) => {
  if (facts.assembly.circuits.length < 2 || circuitIsOpen(facts)) return [];
  if (facts.assembly.instances.some(({ component }) => component.kind === "switch" && component.senses !== "stop-lamp")) return [];
  const severity = isFromRuleYear(facts) === false ? "note" : "decide";
  return [finding("warning-missing", { place: "both circuits", seen: "no differential-pressure switch and no level switch is listed", severity })];
};

/** The valves the platform left the works with had a hydraulic stop-lamp switch, and nothing on the car has one now. */
export const stopLampLost: Rule = (facts) => {
  const { catalogue, assembly } = facts;
  if (circuitIsOpen(facts)) return [];
  const platform = lookUp(catalogue.platforms, assembly.car.platform)?.name;
  const originals = catalogue.lineSets.filter((set) => set.platform === platform).flatMap((set) => set.valves ?? []).flatMap((name) => lookUp(catalogue.components, name) ?? []);
  const had = originals.find(hasStopLampPort);
  if (!had || assembly.instances.some(({ component }) => hasStopLampPort(component) || component.kind === "switch")) return [];
  return [finding("stop-lamp-lost", { place: had.name, seen: `the platform's ${had.name} carried the stop-lamp switch; no part listed now has a port for one, and no switch is listed` })];
};

/** A switch port on a part of one circuit can only be a stop-lamp switch: a differential-pressure switch needs both circuits. */
function hasStopLampPort({ ports }: Component): boolean {
  const circuits = new Set(ports.filter(({ use }) => use === "line").map(({ circuit }) => circuit));
  return circuits.size < 2 && ports.some(({ use }) => use === "switch");
}

export const parkingBrakeLost: Rule = (facts) => {
  const told = parkingBrakes(facts);
  if (told.driveline !== false || told.brakes.length === 0 || told.brakes.some(({ yes }) => yes !== false)) return [];
  return [finding("parking-brake-lost", { place: told.brakes.map(({ name }) => name).join(", "), seen: `neither ${told.brakes.map(({ name }) => name).join(" nor ")} nor the driveline has a parking brake` })];
};

function parkingBrakes({ assembly, catalogue }: CarFacts) {
  const brakes = [...new Set(assembly.instances.filter((one) => brakeKind(one)).map(({ component }) => component))].map(({ name, wheelBrake }) => ({ name, yes: wheelBrake?.parkingBrake }));
  const driveline = assembly.car.platformFigures.drivelineParkingBrake ?? lookUp(catalogue.platforms, assembly.car.platform)?.figures.drivelineParkingBrake;
  return { brakes, driveline };
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
  const unit = facts.assembly.instances.find(({ component }) => component.kind === "anti-lock-unit");
  const steps = facts.paths.flatMap((path) => [...holdOffOn(path), ...proportioningOn(facts, path)]).filter(({ instance }) => instance !== unit);
  if (!unit || steps.length === 0) return [];
  const valves = [...new Set(steps.map(({ instance }) => instance.label))].join(" and ");
  return [finding("anti-lock-present", { place: valves, seen: `${unit.label} stands on this car with ${valves}` })];
};

export const bleedTool: Rule = (facts) => {
  if (facts.catalogue.settings.bleeding !== "pressure") return [];
  const holds = facts.paths.flatMap(holdOffOn);
  return oncePerCause(holds, ({ instance }) => instance.label).map(({ cause }) => finding("bleed-tool", { place: cause, seen: `${cause} shuts the front line while pressure bleeding` }));
};

export const copperTube: Rule = ({ assembly }) =>
  assembly.car.material === "copper" ? [finding("material-copper", { place: "Cars: Material", seen: "the lines are to be plain copper" })] : [];

export const mixedMaterials: Rule = ({ assembly }) =>
  assembly.car.otherMaterials.length === 0 ? [] : [finding("material-mixed", { place: "Cars: Material", seen: `the row names ${[assembly.car.material, ...assembly.car.otherMaterials].join(" and ")}` })];

/** Silicone fluid (DOT 5) never goes with glycol fluid, nor through an anti-lock unit. */
export const mixedFluids: Rule = ({ assembly }) => {
  const { fluids } = assembly.car;
  const silicone = fluids.includes("DOT 5");
  const glycol = fluids.filter((fluid) => fluid !== "DOT 5");
  if (silicone && glycol.length > 0) return [finding("fluid-mixed", { place: "Cars: Fluid", seen: `the row names DOT 5 silicone with ${glycol.join(" and ")}` })];
  const unit = assembly.instances.find(({ component }) => component.kind === "anti-lock-unit");
  return silicone && unit ? [finding("fluid-mixed", { place: unit.label, seen: `DOT 5 silicone is to go through ${unit.label}` })] : [];
};

/** Pressure is the same in both sizes; only flow differs. */
export const tubeReduced: Rule = ({ assembly, runs }) =>
  assembly.circuits.flatMap(({ name }) => {
    const sizes = new Map(runs.flatMap(({ circuit, tube }) => (circuit === name && tube !== undefined ? [[tubeKey(tube), sayTube(tube)] as const] : [])));
    return sizes.size < 2 ? [] : [finding("tube-reduced", { place: `circuit ${name}`, seen: `circuit ${name} runs in ${[...sizes.values()].join(" and ")}` })];
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
