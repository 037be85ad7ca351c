/** What the fluid meets on its way from a master outlet to each wheel. */
import { isPlain, type Component, type Duty, type Passage, type Port, type Wheel } from "../component";
import { outletsFedBy } from "./circuits";
import { portKey, type Assembly, type Instance, type Joint, type PortRef } from "./graph";

/** One duty of one passage, on the way to a wheel. Two paths through the same passage share its id. */
export interface PathStep {
  readonly id: string;
  readonly instance: Instance;
  readonly duty: Duty;
  readonly reversed: boolean;
}

export interface WheelPath {
  readonly wheel: Wheel;
  readonly brake: Instance;
  readonly outlet: PortRef;
  readonly steps: readonly PathStep[];
  readonly joints: readonly Joint[];
  readonly through: readonly Instance[];
  /** Parts on the way whose contents nobody has said. */
  readonly unknown: readonly Instance[];
}

/** Every path from a master outlet to a wheel, in the order of the master's outlets. */
export function wheelPaths(assembly: Assembly): WheelPath[] {
  const master = assembly.instances.find(({ component }) => component.kind === "master");
  if (!master) return [];
  const from = new Map<string, Joint>(assembly.joints.map((joint) => [portKey(joint.from), joint]));
  return master.component.ports
    .filter((port) => port.flow === "out" && port.use === "line")
    .flatMap((port) => follow({ from, assembly }, { outlet: { instance: master, port }, steps: [], joints: [], through: [], unknown: [] }, { instance: master, port }));
}

type Walked = Omit<WheelPath, "wheel" | "brake">;
interface Network {
  readonly from: ReadonlyMap<string, Joint>;
  readonly assembly: Assembly;
}

function follow(network: Network, walked: Walked, outlet: PortRef): WheelPath[] {
  const joint = network.from.get(portKey(outlet));
  if (!joint || walked.joints.includes(joint)) return [];
  const here: Walked = { ...walked, joints: [...walked.joints, joint], through: [...walked.through, joint.to.instance] };
  const { instance } = joint.to;
  if (instance.wheel && instance.component.kind !== "hose") return [{ ...here, wheel: instance.wheel, brake: instance }];
  const ways = waysThrough(instance, joint.to.port);
  if (ways.length === 0 && instance.wheel) return atWheel(network, here, instance.wheel);
  return ways.flatMap(({ port, steps, unknown }) => {
    const next: Walked = { ...here, steps: [...here.steps, ...steps], unknown: unknown ? [...here.unknown, instance] : here.unknown };
    const beyond = follow(network, next, { instance, port });
    return beyond.length === 0 && instance.wheel ? atWheel(network, next, instance.wheel) : beyond;
  });
}

/** A hose at a wheel ends at that wheel's brake; that last joint is not a hard line and is not listed as one. */
function atWheel({ assembly }: Network, walked: Walked, wheel: Wheel): WheelPath[] {
  const brake = assembly.instances.find((instance) => instance.wheel === wheel && instance.component.kind !== "hose");
  return brake ? [{ ...walked, wheel, brake }] : [];
}

interface Way {
  readonly port: Port;
  readonly steps: readonly PathStep[];
  readonly unknown: boolean;
}

function waysThrough(instance: Instance, entered: Port): Way[] {
  const { component } = instance;
  if (entered.flow === "out" && component.kind !== "tee") return backwards(instance, entered);
  const outlets = component.kind === "tee" ? component.ports.filter((port) => port !== entered && port.use === "line" && !port.plugged) : outletsFedBy(component, entered);
  return outlets.map((port) => way(instance, port, passageBetween(component, entered.name, port.name)));
}

function backwards(instance: Instance, entered: Port): Way[] {
  const { component } = instance;
  const inlets = component.ports.filter((port) => port.flow === "in" && outletsFedBy(component, port).includes(entered));
  return inlets.map((port) => way(instance, port, passageBetween(component, port.name, entered.name), true));
}

const passageBetween = (component: Component, from: string, to: string): Passage | undefined =>
  component.passages.find((passage) => passage.from === from && passage.to === to);

function way(instance: Instance, port: Port, passage: Passage | undefined, reversed = false): Way {
  const duties = passage?.duties;
  const steps = (duties ?? []).map((duty, index) => ({ id: `${instance.label}|${passage?.from}|${passage?.to}|${index}`, instance, duty, reversed }));
  return { port, steps, unknown: duties === undefined && !isPlain(instance.component) };
}
