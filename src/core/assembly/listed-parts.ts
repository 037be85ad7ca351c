/** A list of parts in a cell, as instances with a label each. */
import type { ListedPart } from "../car";
import type { Catalogue } from "../catalogue";
import type { Component } from "../component";
import { placeKey, type Instance } from "./graph";
import { findPart, type OpenPoints } from "./open-points";

export interface ListedInstance {
  readonly instance: Instance;
  /** As the row says it: a circuit, a wheel or a place. */
  readonly at: string | undefined;
}

/** Instances in listed order; a part listed more than once carries where it is, or its number, in its label. */
export function listedParts(open: OpenPoints, catalogue: Catalogue, column: string, parts: readonly ListedPart[]): ListedInstance[] {
  const found = parts.flatMap((part) => {
    const component = findPart(open, catalogue, column, part.component);
    return component ? [{ component, at: part.at }] : [];
  });
  return found.map((part) => ({
    instance: { label: labelOf(part, found), component: part.component, place: placeGiven(part.at) ?? part.component.place },
    at: part.at,
  }));
}

type Found = Pick<ListedInstance, "at"> & { readonly component: Component };

/** Two of one part in one place are numbered too: every instance has a label of its own. */
function labelOf(part: Found, found: readonly Found[]): string {
  const { component, at } = part;
  const same = found.filter((other) => other.component === component);
  if (same.length === 1) return component.name;
  const nth = (of: readonly Found[]): number => of.indexOf(part) + 1;
  const inPlace = same.filter((other) => other.at !== undefined && other.at === at);
  if (at === undefined) return `${component.name}@${nth(same)}`;
  return inPlace.length > 1 ? `${component.name}@${at}-${nth(inPlace)}` : `${component.name}@${at}`;
}

const CIRCUIT_WORDS = new Set(["front", "rear", "1", "2"]);
const placeGiven = (at: string | undefined): string | undefined => (at === undefined || CIRCUIT_WORDS.has(placeKey(at)) ? undefined : at);
