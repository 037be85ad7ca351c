/** Rules about joints: does every end fit, is every port used, is every wheel reached. */
import { portKey, sayCircuit, sayJoint, sayPort, type Instance, type Joint, type PortRef } from "../assembly";
import { faceOf, WHEELS, type Port } from "../component";
import { finding, type Finding, type FindingCode } from "../finding";
import type { NoFittingReason } from "../fittings";
import { flareFor, sayFace, saySeat, SEATS, type Flare } from "../joint";
import type { Run, RunEnd } from "../runs";
import { isNearMiss, type Thread } from "../thread";
import { sayTube } from "../tube";
import { portsWithoutHose } from "./car-as-equipped";
import { circuitIsOpen, hasUnreadPorts, type CarFacts, type Rule } from "./rule";

const CODE_FOR_REASON: Readonly<Record<NoFittingReason, FindingCode>> = {
  seat: "seat-mismatch", gender: "thread-mismatch", tube: "tube-nut-mismatch", thread: "thread-mismatch",
};

/** Each end of each run that no nut and no adapter chain joins, but for those that wait for a hose. A compression port is a fault of its own, whatever nut it takes. */
export const endsThatDoNotFit: Rule = (facts) => {
  const forAHose = portsWithoutHose(facts);
  return facts.runs.flatMap((run) => [run.a, run.b].filter(({ at }) => !forAHose.has(portKey(at))).flatMap((end) => endThatDoesNotFit(run, end)));
};

function endThatDoesNotFit(run: Run, end: RunEnd): Finding[] {
  const face = faceOf(end.at.port);
  if (!end.fitting || end.fitting.fits || !face || face.seat === "compression" || run.tube === undefined) return [];
  const why: Readonly<Record<NoFittingReason, string>> = {
    seat: `the nut's thread fits but no nut for ${sayTube(run.tube)} tube seals on the port's ${saySeat(face.seat)} seat`,
    gender: `a nut for ${sayTube(run.tube)} tube has the thread and seat, but both sides are ${face.gender}`,
    tube: `nuts for ${face.thread.name} ${saySeat(face.seat)} exist, but none is bored for ${sayTube(run.tube)} tube`,
    thread: `no nut for ${sayTube(run.tube)} tube and no adapter takes ${sayFace(face)}`,
  };
  return [finding(CODE_FOR_REASON[end.fitting.reason], { place: sayPort(end.at), seen: `run ${run.number}, ${sayJoint(run.joint)}: ${why[end.fitting.reason]}` })];
}

/** Parts screwed straight into one another (a hose end into a caliper) must have one thread and one seat. */
export const directJoints: Rule = (facts) => facts.assembly.joints.filter(({ by }) => by === "direct").flatMap((joint) => directJoint(facts, joint));

function directJoint(facts: CarFacts, joint: Joint): Finding[] {
  const [a, b] = [faceOf(joint.from.port), faceOf(joint.to.port)];
  if (!a || !b) return [];
  const place = sayJoint(joint);
  if (a.thread.name !== b.thread.name) return [wrongThread(facts, a.thread, b.thread, { place, seen: `${place}: ${a.thread.name} on ${b.thread.name}` })];
  return a.seat === b.seat ? [] : [finding("seat-mismatch", { place, seen: `${place}: ${saySeat(a.seat)} on ${saySeat(b.seat)}, thread ${a.thread.name}` })];
}

function wrongThread({ catalogue }: CarFacts, found: Thread, port: Thread, said: { place: string; seen: string }): Finding {
  const { nearMissDiameter, nearMissPitchShare } = catalogue.settings;
  const near = isNearMiss(found, port, { diameter: nearMissDiameter, pitchShare: nearMissPitchShare });
  return finding(near ? "thread-near-miss" : "thread-mismatch", said);
}

/** The nut and the flare found on a joint, against the two ports it is on. */
export const jointsAsFound: Rule = (facts) => facts.assembly.joints.filter(({ found }) => found).flatMap((joint) => [...nutAsFound(facts, joint), ...flareAsFound(joint)]);

function nutAsFound(facts: CarFacts, joint: Joint): Finding[] {
  const thread = joint.found?.nutThread;
  const ports = [joint.from, joint.to].filter(({ port }) => port.thread);
  if (!thread || ports.length === 0 || ports.some(({ port }) => port.thread?.name === thread.name)) return [];
  const judged = ports.map((at) => wrongThread(facts, thread, at.port.thread as Thread, { place: sayPort(at), seen: `a ${thread.name} nut was found on ${at.port.thread?.name} at ${sayPort(at)}` }));
  return [judged.find(({ code }) => code === "thread-near-miss") ?? (judged[0] as Finding)];
}

function flareAsFound(joint: Joint): Finding[] {
  const flare = flareNamed(joint.found?.flare);
  const seats = [joint.from, joint.to].flatMap((at) => (at.port.seat ? [{ at, seat: at.port.seat }] : []));
  const [first] = seats;
  if (!flare || !first || seats.some(({ seat }) => flareFor(seat) === flare)) return [];
  return [finding("seat-mismatch", { place: sayPort(first.at), seen: `a ${flare} flare was found on the ${saySeat(first.seat)} seat at ${sayPort(first.at)}` })];
}

function flareNamed(text: string | undefined): Flare | undefined {
  const plain = (text ?? "").trim().toLowerCase();
  const seat = SEATS.find((name) => name === plain.replaceAll(" ", "-"));
  if (seat) return flareFor(seat);
  if (plain.includes("bubble")) return "bubble";
  if (plain.includes("37")) return "single 37°";
  return plain.includes("double") ? "double 45°" : undefined;
}

/** Line ports with nothing on them. A part that could not be placed for want of an answer is not open, it is unknown. */
export const portsLeftOpen: Rule = (facts) => {
  if (circuitIsOpen(facts)) return [];
  const joined = new Set(facts.assembly.joints.flatMap(({ from, to }) => [portKey(from), portKey(to)]));
  return facts.assembly.instances.filter((instance) => isChecked(facts, instance, joined)).flatMap((instance) => {
    const open = openPorts(facts, instance, joined);
    if (open.length === 0) return [];
    const names = open.map(({ name }) => name);
    return [finding("port-left-open", { place: `${instance.label}: ${names.join(", ")}`, seen: `nothing is on ${names.map((name) => name || "a port").join(" and ")} of ${instance.label}` })];
  });
};

const WHEEL_PARTS: ReadonlySet<string> = new Set(["disc", "drum", "hose", "switch", "booster"]);

/** Wheel parts are judged by whether the wheel is fed; a hose only by an outlet too many. */
function isChecked({ assembly }: CarFacts, instance: Instance, joined: ReadonlySet<string>): boolean {
  if (assembly.unplaced.includes(instance) || instance.unnamed) return false;
  if (instance.component.kind === "hose") return instance.component.ports.filter(({ flow }) => flow === "out").length > 1 && isJoined(instance, joined);
  return !WHEEL_PARTS.has(instance.component.kind) && (isJoined(instance, joined) || !assembly.unfed.length);
}

const isJoined = (instance: Instance, joined: ReadonlySet<string>): boolean => instance.component.ports.some((port) => joined.has(portKey({ instance, port })));

const openPorts = ({ assembly }: CarFacts, instance: Instance, joined: ReadonlySet<string>): Port[] =>
  instance.component.ports.filter((port) => port.use === "line" && !port.plugged && !assembly.plugged.has(portKey({ instance, port })) && !joined.has(portKey({ instance, port })));

/** Switch ports beyond the switches listed. A switch of another thread does not fill the port. */
export const switchPorts: Rule = (facts) => {
  const { assembly } = facts;
  if (hasUnreadPorts(facts)) return [];
  const switches = assembly.instances.filter(({ component }) => component.kind === "switch");
  const ports = assembly.instances
    .filter(({ component }) => component.kind !== "switch")
    .flatMap((instance) => instance.component.ports.filter(({ use, plugged }) => use === "switch" && !plugged).map((port): PortRef => ({ instance, port })));
  const open = ports.filter((at) => !assembly.plugged.has(portKey(at)) && !fillPort(switches, at.port));
  return open.map((at) => finding("switch-port-open", { place: sayPort(at), seen: `neither a switch nor a plug is listed for ${sayPort(at)}` }));
};

function fillPort(switches: Instance[], port: Port): boolean {
  const fits = switches.findIndex(({ component }) => {
    const thread = component.ports[0]?.thread;
    return !thread || !port.thread || thread.name === port.thread.name;
  });
  if (fits >= 0) switches.splice(fits, 1);
  return fits >= 0;
}

/** Tees that had to be proposed. Behind a hose that the row does not name, or beside a part of several outlets not placed yet, none is known to be missing. */
export const outletsShort: Rule = (facts) => {
  const { assembly } = facts;
  if (hasUnreadPorts(facts)) return [];
  return assembly.instances.filter(({ proposed }) => proposed && !assembly.unplaced.some(branches)).flatMap((tee) => {
    const feeder = assembly.joints.find(({ to }) => to.instance === tee);
    if (feeder?.from.instance.unnamed) return [];
    const price = tee.component.price === undefined ? "" : `, ${tee.component.price.toFixed(2)} ${facts.catalogue.settings.currency}`;
    const place = feeder ? sayPort(feeder.from) : tee.label;
    return [finding("outlet-shortage", { place, seen: `${place} has more than one line to feed and no tee is listed (proposed: ${tee.component.name}${price})` })];
  });
};

const branches = ({ component }: Instance): boolean => component.ports.filter(({ flow, use, plugged }) => flow === "out" && use === "line" && !plugged).length > 1;

/** Wheels that no path reaches, one finding a circuit. On a circuit short of outlets that is the cause and has its own code. */
export const wheelsUnfed: Rule = (facts) => {
  if (circuitIsOpen(facts)) return [];
  const reached = new Set(facts.paths.map(({ wheel }) => wheel));
  const short = facts.paths.filter(({ through }) => through.some(({ proposed }) => proposed)).map(({ wheel }) => wheel);
  return facts.assembly.circuits.flatMap((circuit) => {
    if (short.some((wheel) => circuit.wheels.includes(wheel))) return [];
    const unfed = WHEELS.filter((wheel) => circuit.wheels.includes(wheel) && !reached.has(wheel));
    if (unfed.length === 0) return [];
    return [finding("circuit-unfed", { place: `${unfed.join(", ")} (${sayCircuit(circuit.name)})`, seen: `no line from the master reaches ${unfed.join(" or ")}` })];
  });
};

/** A valve found fed through an outlet. An arrow says it matters; so does a duty, where the row leaves the arrow out. */
export const flowReversed: Rule = ({ assembly }) =>
  assembly.joints.flatMap(({ found, from, to }) => {
    const { component } = to.instance;
    const hasDuty = component.passages.some(({ duties }) => duties?.some(({ does }) => does !== "through"));
    if (!found || to.port.flow !== "out" || !(component.directional ?? hasDuty)) return [];
    return [finding("flow-reversed", { place: sayPort(to), seen: `${sayPort(from)} was found on the outlet of ${to.instance.label}` })];
  });

export const longChains: Rule = ({ runs, catalogue }) =>
  runs.flatMap((run) => [run.a, run.b].flatMap(({ at, fitting }) => {
    if (!fitting?.fits || fitting.adapters.length <= catalogue.settings.mostAdapters) return [];
    return [finding("joint-count", { place: sayPort(at), seen: `${fitting.adapters.length} adapters in a row at ${sayPort(at)}` })];
  }));
