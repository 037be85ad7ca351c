/** The list of rules, and which finding hides which: one cause, one code. */
import { assemble, wheelPaths } from "../assembly";
import type { Finding, FindingCode } from "../finding";
import type { Question } from "../question";
import * as equipped from "./car-as-equipped";
import { bendsThatCannotBeMade, bendsTooTight } from "./bending";
import * as chain from "./chain";
import { outletsCrossed } from "./crossed";
import * as joining from "./joining";
import * as physics from "./physics";
import type { CarFacts, Rule } from "./rule";
import { burstMargin } from "./tube-strength";
import * as whole from "./whole-car";

export type { CarFacts } from "./rule";

const joiningRules: readonly Rule[] = [
  joining.endsThatDoNotFit, joining.directJoints, joining.jointsAsFound, joining.portsLeftOpen, joining.switchPorts, joining.outletsShort,
  joining.wheelsUnfed, outletsCrossed, joining.flowReversed, joining.longChains, bendsThatCannotBeMade, bendsTooTight,
];

const chainRules: readonly Rule[] = [
  chain.meteringDoubled, chain.meteringOnRear, chain.meteringForNoDiscs, chain.meteringMissing, chain.proportioningDoubled,
  chain.proportioningOneSided, chain.proportioningOnFront, chain.residualReachesDisc, chain.residualMissingOnDrum, chain.residualDoubled,
  chain.residualBehindProportioning,
];

const physicsRules: readonly Rule[] = [
  physics.rearLocksFirst, physics.proportioningMissing, physics.rearTooWeak, physics.valveNeverActs, physics.residualMissingLowMaster, physics.pedalForce, physics.travel,
  burstMargin, physics.balanceNotChecked,
];

const equipmentRules: readonly Rule[] = [
  equipped.hoseMissing, equipped.compressionJoint, equipped.warningMissing, equipped.stopLampLost, equipped.parkingBrakeLost, equipped.antiLockPresent,
  equipped.bleedTool, equipped.copperTube, equipped.mixedMaterials, equipped.mixedFluids, equipped.tubeReduced, equipped.singleFlare, equipped.reservoirSwapped,
];

const carRules: readonly Rule[] = [...equipmentRules, whole.singleCircuit, whole.unknownNames, whole.partsUnread];

/** A finding of the first code explains one of the second on the same car. */
const HIDES: readonly (readonly [FindingCode, FindingCode])[] = [
  ["outlets-crossed", "circuit-unfed"],
  ["outlets-crossed", "reservoir-swapped"],
  ["proportioning-on-front", "rear-locks-first"],
  ["proportioning-on-front", "drum-gain-uncertain"],
  ["proportioning-on-front", "proportioning-missing"],
  ["proportioning-on-front", "pedal-force-high"],
  ["proportioning-on-front", "vacuum-short"],
  ["proportioning-one-sided", "rear-locks-first"],
  ["proportioning-one-sided", "drum-gain-uncertain"],
  ["proportioning-doubled", "rear-too-weak"],
  ["proportioning-upstream-of-both", "pedal-force-high"],
  ["proportioning-upstream-of-both", "vacuum-short"],
  ["volume-short", "travel-long"],
  // With the fronts cut, no driver reaches the pressure at which they would lock.
  ["proportioning-on-front", "burst-margin"],
  ["proportioning-upstream-of-both", "burst-margin"],
  ["outlets-crossed", "burst-margin"],
];

/** Every finding about one car, by every rule of the list. @param ofParts where those are known already, as cars of one equipment share them */
export function findingsOf(facts: CarFacts, ofParts: readonly Finding[] = findingsOfParts(facts)): Finding[] {
  const all = [...ofParts, ...apply(physicsRules, isCrossed(ofParts) ? crossedBack(facts) : facts)];
  return all.filter(({ code }) => !HIDES.some(([by, hidden]) => hidden === code && all.some((other) => other.code === by)));
}

/** The findings that need no figure of the car: what its parts and lines say. */
export function findingsOfParts(facts: CarFacts): Finding[] {
  const joints = apply(joiningRules, facts);
  const straight = isCrossed(joints) ? crossedBack(facts) : facts;
  return [...openAlsoIn(straight, joints), ...apply(chainRules, straight), ...apply(carRules, facts)];
}

/** A part that crossed lines pass by has both its ends open by that alone: an open port counts where it is open with the lines crossed back too. */
function openAlsoIn(straight: CarFacts, joints: readonly Finding[]): readonly Finding[] {
  if (!isCrossed(joints)) return joints;
  const open = new Set(joining.portsLeftOpen(straight).map(({ place }) => place));
  return joints.filter(({ code, place }) => code !== "port-left-open" || open.has(place));
}

const isCrossed = (findings: readonly Finding[]): boolean => findings.some(({ code }) => code === "outlets-crossed");

const apply = (rules: readonly Rule[], facts: CarFacts): Finding[] => rules.flatMap((rule) => rule(facts));

/** Crossed lines set off the chain rules of the wrong axle; what remains with the lines crossed back has a cause of its own. */
function crossedBack(facts: CarFacts): CarFacts {
  const assembly = assemble({ ...facts.catalogue, joins: new Map() }, facts.assembly.car);
  return { ...facts, assembly, paths: wheelPaths(assembly) };
}

/** What the rules would need to know and the row does not say; no run waits for it. */
export const openQuestions = (facts: CarFacts): Question[] => [...whole.drumQuestions(facts), ...equipped.parkingBrakeQuestions(facts), ...physics.figureQuestions(facts)];
