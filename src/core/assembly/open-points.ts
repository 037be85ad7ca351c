/** Gathers, while one car is read, what its row leaves open. */
import type { Catalogue } from "../catalogue";
import { lookUp } from "../catalogue";
import type { Car } from "../car";
import type { Component } from "../component";
import type { Question } from "../question";

export interface UnknownPart {
  readonly column: string;
  readonly name: string;
}

export interface OpenPoints {
  readonly questions: Question[];
  readonly assumptions: string[];
  readonly unknownParts: UnknownPart[];
}

export const nothingOpen = (): OpenPoints => ({ questions: [], assumptions: [], unknownParts: [] });

/** A question that a column of the car's own row would answer; runs or joints wait for it. */
export function askCar(open: OpenPoints, car: Car, { column, ask, why }: Pick<Question, "column" | "ask" | "why">): void {
  open.questions.push({ table: "Cars", column, subject: car.name, ask, why, blocks: true });
}

/** The component a row names. A name that Components lacks is an unknown part. */
export function findPart(open: OpenPoints, catalogue: Catalogue, column: string, name: string): Component | undefined {
  const component = lookUp(catalogue.components, name);
  if (!component) open.unknownParts.push({ column, name });
  return component;
}
