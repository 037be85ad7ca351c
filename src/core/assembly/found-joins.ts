/** Joints as found on the car replace the ones the assembly inferred. */
import type { FoundJoin } from "../car";
import { nameKey } from "../catalogue";
import { portKey, sayPort, type Instance, type PortRef } from "./graph";
import type { Link } from "./tees";

export interface FoundLink extends Link {
  readonly found?: FoundJoin | undefined;
}

export interface LinksAsFound {
  readonly links: readonly FoundLink[];
  readonly plugged: ReadonlySet<string>;
  /** Rows of Joins that name no part or port of this car. */
  readonly unmatched: readonly FoundJoin[];
  readonly assumptions: readonly string[];
}

/**
 * Applies what was found to what was inferred. A found joint takes its two ports out of the joints inferred for them; the two ends so
 * freed are taken to be joined to one another (two crossed lines), and a valve found fed through its outlet passes on through its inlet.
 */
export function asFound(inferred: readonly Link[], instances: readonly Instance[], joins: readonly FoundJoin[]): LinksAsFound {
  let links: readonly FoundLink[] = inferred;
  const plugged = new Set<string>();
  const unmatched: FoundJoin[] = [];
  const assumptions: string[] = [];
  for (const join of joins) {
    const from = portOf(instances, join.from);
    const to = join.to && portOf(instances, join.to);
    if (!from || (join.to && !to)) unmatched.push(join);
    else if (to) links = joined(links, { from, to, found: join }, assumptions);
    else if (join.plugged) {
      plugged.add(portKey(from));
      links = links.filter((link) => !touches(link, from));
    }
  }
  return { links, plugged, unmatched, assumptions };
}

function portOf(instances: readonly Instance[], { component, port }: { component: string; port: string }): PortRef | undefined {
  const key = nameKey(component);
  const instance = instances.find(({ label }) => nameKey(label) === key) ?? only(instances.filter((one) => nameKey(one.component.name) === key));
  const found = instance?.component.ports.find(({ name }) => nameKey(name) === nameKey(port));
  return instance && found && { instance, port: found };
}

const only = <T>(list: readonly T[]): T | undefined => (list.length === 1 ? list[0] : undefined);
const same = (a: PortRef, b: PortRef): boolean => portKey(a) === portKey(b);
const touches = (link: Link, end: PortRef): boolean => same(link.from, end) || same(link.to, end);

function joined(links: readonly FoundLink[], found: FoundLink, assumptions: string[]): readonly FoundLink[] {
  const already = links.find((link) => same(link.from, found.from) && same(link.to, found.to));
  if (already) return links.map((link) => (link === already ? found : link));
  if (found.to.port.flow === "out") return fedBackwards(links, found);
  const fromLink = links.find((link) => same(link.from, found.from));
  const toLink = links.find((link) => same(link.to, found.to));
  const rest = links.filter((link) => link !== fromLink && link !== toLink);
  if (!fromLink || !toLink || fromLink.found || toLink.found) return [...rest, ...[fromLink, toLink].filter((link): link is FoundLink => link?.found !== undefined), found];
  // A part is not joined to itself: both its ends then stay open, and are told of.
  if (toLink.from.instance === fromLink.to.instance) return [...rest, found];
  assumptions.push(`${sayPort(toLink.from)} is taken as joined to ${sayPort(fromLink.to)}, since ${sayPort(found.from)} was found on ${sayPort(found.to)}`);
  return [...rest, found, { from: toLink.from, to: fromLink.to }];
}

/** Fed through its outlet, the part passes on, if at all, through the inlet that lost its line. */
function fedBackwards(links: readonly FoundLink[], found: FoundLink): readonly FoundLink[] {
  const displaced = links.find((link) => same(link.from, found.from));
  const inlet = displaced?.to.instance === found.to.instance ? displaced.to : links.find((link) => link.to.instance === found.to.instance)?.to;
  return [
    ...links
      .filter((link) => link !== displaced && !(inlet && same(link.to, inlet)))
      .map((link) => (inlet && same(link.from, found.to) ? { ...link, from: inlet } : link)),
    found,
  ];
}
