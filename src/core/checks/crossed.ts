/** Lines found on the wrong circuit. */
import { assemble, sayJoint, sayPort, theCircuit, wheelPaths, type CircuitName, type Joint, type WheelPath } from "../assembly";
import { axleOf, type PortCircuit, type Wheel } from "../component";
import { finding } from "../finding";
import { sayWheels, type CarFacts, type Rule } from "./rule";

/** A line found between two circuits, by what its ports say or by the wheels it then feeds; a pair of crossed lines is one cause. */
export const outletsCrossed: Rule = (facts) => {
  const found = facts.assembly.joints.filter((joint) => joint.found);
  const [byPorts] = found.filter(portsDisagree);
  if (byPorts) {
    const { from, to } = byPorts;
    const place = found.filter(portsDisagree).map(sayJoint).join("; ");
    return [finding("outlets-crossed", { place, seen: `${sayPort(from)} is of ${theCircuit(from.port.circuit)} and was found on ${sayPort(to)} of ${theCircuit(to.port.circuit)}` })];
  }
  const strayed = found.length === 0 ? [] : strayedPaths(facts);
  const joints = found.filter((joint) => strayed.some((path) => path.joints.includes(joint)));
  const [first] = joints;
  if (!first) return [];
  const fed = strayed.filter((path) => path.joints.includes(first));
  return [finding("outlets-crossed", { place: joints.map(sayJoint).join("; "), seen: `${sayPort(first.from)} was found on ${sayPort(first.to)}, and ${sayPort((fed[0] as WheelPath).outlet)} so feeds ${sayWheels(fed)}` })];
};

/** A master named by axles may stand on a car split diagonally, so names of two kinds say nothing against each other. */
function portsDisagree({ from, to }: Joint): boolean {
  const [a, b] = [from.port.circuit, to.port.circuit];
  return a !== b && namesAxle(a) === namesAxle(b) && a !== "any" && b !== "any";
}

const namesAxle = (circuit: PortCircuit): boolean => circuit === "front" || circuit === "rear";

/** Paths to a wheel that the split does not give to their circuit; the circuit of an outlet is read off the car as it would be plumbed. */
function strayedPaths({ catalogue, assembly, paths }: CarFacts): readonly WheelPath[] {
  const asPlumbed = wheelPaths(assemble({ ...catalogue, joins: new Map() }, assembly.car));
  const circuitOf = (path: WheelPath): CircuitName | undefined => {
    const own = asPlumbed.find(({ outlet }) => outlet.port.name === path.outlet.port.name);
    return own && assembly.circuits.find(({ wheels }) => wheels.includes(own.wheel))?.name;
  };
  return assembly.circuits.flatMap(({ name }) => {
    const own = paths.filter((path) => circuitOf(path) === name);
    return name === "front" || name === "rear" ? own.filter(({ wheel }) => axleOf(wheel) !== name) : notDiagonal(name, own);
  });
}

const DIAGONALS: readonly (readonly Wheel[])[] = [["LF", "RR"], ["RF", "LR"]];

/** Either diagonal is sound, whichever circuit has it. */
function notDiagonal(name: CircuitName, paths: readonly WheelPath[]): readonly WheelPath[] {
  if (name === "single") return [];
  return DIAGONALS.some((pair) => paths.every(({ wheel }) => pair.includes(wheel))) ? [] : paths;
}
