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
  return found.map(({ component, at }, index) => {
    const nth = found.slice(0, index).filter((other) => other.component === component).length + 1;
    return { instance: { label: labelOf(component, { at, nth, count: found.filter((other) => other.component === component).length }), component, place: placeGiven(at) ?? component.place }, at };
  });
}

const labelOf = ({ name }: Component, { at, nth, count }: { readonly at: string | undefined; readonly nth: number; readonly count: number }): string =>
  count > 1 ? `${name}@${at ?? nth}` : name;

const CIRCUIT_WORDS = new Set(["front", "rear", "1", "2"]);
const placeGiven = (at: string | undefined): string | undefined => (at === undefined || CIRCUIT_WORDS.has(placeKey(at)) ? undefined : at);
