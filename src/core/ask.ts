/** Which question to ask first: the one whose answer tells most about the line sets and layouts still possible. */
import { possibleAnswers, type PossibleAnswer } from "./answers";
import type { Car, Platform } from "./car";
import { nameKey, type Catalogue, type LineSet } from "./catalogue";
import { brakeKindOf, isOfYear, possibleSets, SET_TRAITS, valvesKey, type SetTrait } from "./possible-sets";
import type { Question } from "./question";

/** One set that may be the right one, or a platform without a set, with how likely it is and how likely each answer is if it is. */
export interface Hypothesis {
  readonly name: string;
  readonly weight: number;
  /** By trait: each possible answer with its chance; a trait that the set does not state is missing. */
  readonly answers: Readonly<Partial<Record<SetTrait, ReadonlyMap<string, number>>>>;
}

export interface RankedQuestion extends Question {
  /** Expected information about which set or layout it is. */
  readonly bits: number;
  readonly answers: readonly PossibleAnswer[];
}

const NOTHING = 1e-9;

/**
 * The open questions of a car, best first: by expected information, then those that runs wait for, then the rest in order found.
 * A trait that is not known but would separate the sets still possible is asked even where no run waits for it.
 */
export function rankQuestions(catalogue: Catalogue, car: Car, open: readonly Question[]): RankedQuestion[] {
  const openTraits = SET_TRAITS.filter((trait) => isOpen(catalogue, car, trait));
  if (openTraits.length === 0 && open.length === 0) return [];
  const hypotheses = [...hypothesesOf(catalogue, possibleSets(catalogue, car)), ...platformsWithoutSet(catalogue, car)];
  const plain = (one: Question): RankedQuestion => ({ ...one, bits: 0, answers: possibleAnswers(catalogue, car, one) });
  const traits = openTraits.map((trait) => askTrait(hypotheses, trait, plain(open.find((one) => answersTrait(one, trait)) ?? traitQuestion(car, trait))));
  const telling = traits.filter(({ bits }) => bits > NOTHING).sort((a, b) => b.bits - a.bits);
  const rest = open.filter((one) => !telling.some(({ column }) => answersTrait(one, column)));
  const others = rest.map((one) => traits.find(({ column }) => answersTrait(one, column)) ?? plain(one));
  return [...telling, ...others.filter(({ blocks }) => blocks), ...others.filter(({ blocks }) => !blocks)];
}

/**
 * Expected information of a trait: entropy over the hypotheses before the answer, less the mean entropy after it.
 * @returns bits, 0 when the answer changes nothing
 * @source C. E. Shannon, A Mathematical Theory of Communication, 1948: mutual information
 */
export function informationOf(hypotheses: readonly Hypothesis[], trait: SetTrait): number {
  const answers = answersTo(hypotheses, trait);
  if (answers.length < 2) return 0;
  const after = answers.map((answer) => hypotheses.map((one) => one.weight * chance(one, trait, answer, answers.length)));
  const total = sum(hypotheses.map(({ weight }) => weight));
  const mean = sum(after.map((weights) => (sum(weights) / total) * entropy(weights)));
  return Math.max(0, entropy(hypotheses.map(({ weight }) => weight)) - mean);
}

/** The hypotheses an answer leaves, with their weights after it. */
export function given(hypotheses: readonly Hypothesis[], trait: SetTrait, answer: string): Hypothesis[] {
  const count = answersTo(hypotheses, trait).length;
  return hypotheses.map((one) => ({ ...one, weight: one.weight * chance(one, trait, answer, count) })).filter(({ weight }) => weight > 0);
}

export const answersTo = (hypotheses: readonly Hypothesis[], trait: SetTrait): string[] => [...new Set(hypotheses.flatMap((one) => [...(one.answers[trait]?.keys() ?? [])]))].sort();

/** Weights are frequencies where the sets state them; a set without one counts as the mean of the others, and with none stated all are equal. */
export function hypothesesOf(catalogue: Catalogue, sets: readonly LineSet[]): Hypothesis[] {
  const usual = meanFrequency(sets);
  const years = yearSpans(sets);
  return sets.map((set) => ({ name: set.name, weight: set.frequency ?? usual, answers: traitAnswers(catalogue, set, years) }));
}

/** While the platform is not known, one that no possible set is for is a layout still possible. It says nothing of what is on the car now. */
function platformsWithoutSet(catalogue: Catalogue, car: Car): Hypothesis[] {
  if (car.platform !== undefined) return [];
  const covered = new Set(possibleSets(catalogue, car).map(({ platform }) => nameKey(platform)));
  const platforms = [...catalogue.platforms.values()].filter((platform) => !covered.has(nameKey(platform.name)) && isOfYear(platform, car.year));
  const usual = meanFrequency(platforms);
  return platforms.map(({ name, frequency }) => ({ name: `${name} (no set)`, weight: frequency ?? usual, answers: { Platform: new Map([[name, 1]]) } }));
}

function meanFrequency(counted: readonly Pick<LineSet | Platform, "frequency">[]): number {
  const stated = counted.flatMap(({ frequency }) => (frequency === undefined ? [] : [frequency]));
  return stated.length === 0 ? 1 : sum(stated) / stated.length;
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

function entropy(weights: readonly number[]): number {
  const total = sum(weights);
  return total === 0 ? 0 : -sum(weights.filter((weight) => weight > 0).map((weight) => (weight / total) * Math.log2(weight / total)));
}

/** A set that does not state a trait takes any answer alike. */
const chance = (one: Hypothesis, trait: SetTrait, answer: string, count: number): number => {
  const stated = one.answers[trait];
  return stated ? (stated.get(answer) ?? 0) : 1 / Math.max(count, 1);
};

const certain = (answer: string | undefined): ReadonlyMap<string, number> | undefined => (answer === undefined ? undefined : new Map([[answer, 1]]));

function traitAnswers(catalogue: Catalogue, set: LineSet, years: readonly YearSpan[]): Hypothesis["answers"] {
  const answers = {
    Platform: certain(set.platform),
    Year: yearAnswers(set, years),
    "Front brake": certain(set.front),
    "Rear brake": certain(set.rear),
    Valves: certain(set.valves && (valvesKey(catalogue, set.valves) === "" ? "none" : set.valves.join("; "))),
    Material: certain(set.material),
  } satisfies Record<SetTrait, ReadonlyMap<string, number> | undefined>;
  return Object.fromEntries(Object.entries(answers).filter(([, stated]) => stated !== undefined));
}

interface YearSpan {
  readonly first: number;
  readonly last: number;
}

/** The stretches of years within which the same sets are possible. Where a set states only one bound, the other side is a stretch without end. */
function yearSpans(sets: readonly LineSet[]): YearSpan[] {
  const bounded = sets.filter(({ firstYear, lastYear }) => firstYear !== undefined || lastYear !== undefined);
  const starts = bounded.flatMap(({ firstYear, lastYear }) => [firstYear ?? -Infinity, lastYear === undefined ? Infinity : lastYear + 1]);
  const sorted = [...new Set(starts)].sort((a, b) => a - b);
  return sorted.slice(0, -1).map((first, index) => ({ first, last: (sorted[index + 1] ?? first) - 1 }));
}

/** A stretch without end counts as one year: nobody says how long it is. */
const yearsIn = ({ first, last }: YearSpan): number => (Number.isFinite(last - first) ? last - first + 1 : 1);

function sayYears({ first, last }: YearSpan): string {
  if (first === -Infinity) return `${last} or earlier`;
  if (last === Infinity) return `${first} or later`;
  return first === last ? `${first}` : `${first}–${last}`;
}

/** A set's years spread over the stretches it covers, each year alike; undefined when it states none, or the last before the first. */
function yearAnswers({ firstYear, lastYear }: LineSet, spans: readonly YearSpan[]): ReadonlyMap<string, number> | undefined {
  if (firstYear === undefined && lastYear === undefined) return undefined;
  const covered = spans.filter(({ first, last }) => first >= (firstYear ?? -Infinity) && last <= (lastYear ?? Infinity));
  const total = sum(covered.map(yearsIn));
  return total === 0 ? undefined : new Map(covered.map((span) => [sayYears(span), yearsIn(span) / total]));
}

function isOpen(catalogue: Catalogue, car: Car, trait: SetTrait): boolean {
  switch (trait) {
    case "Platform":
      return car.platform === undefined;
    case "Year":
      return car.year === undefined;
    case "Front brake":
      return brakeKindOf(catalogue, car, "front") === undefined;
    case "Rear brake":
      return brakeKindOf(catalogue, car, "rear") === undefined;
    case "Valves":
      return !car.valves.known;
    case "Material":
      return car.material === undefined;
    default:
      return trait satisfies never;
  }
}

const answersTrait = (question: Question, trait: string): boolean => question.table === "Cars" && question.column === trait;

const traitQuestion = (car: Car, trait: SetTrait): Question => ({
  table: "Cars", column: trait, subject: car.name, blocks: false, ask: TRAIT_QUESTIONS[trait], why: "more than one line set fits what is known",
});

const TRAIT_QUESTIONS: Readonly<Record<SetTrait, string>> = {
  Platform: "Which platform is the car built on?",
  Year: "Which year is the car?",
  "Front brake": "Are there discs or drums at the front?",
  "Rear brake": "Are there discs or drums at the rear?",
  Valves: "Which valves are on the car now, from the master on?",
  Material: "Which tube material does the customer want?",
};

/** Answers that no set and no platform speaks of are left as the question itself has them. */
function askTrait(hypotheses: readonly Hypothesis[], trait: SetTrait, question: RankedQuestion): RankedQuestion {
  const answers = answersTo(hypotheses, trait).map((answer): PossibleAnswer => {
    const leaves = given(hypotheses, trait, answer).map(({ name }) => name);
    return { answer, leaves, decides: leaves.join(", ") };
  });
  return { ...question, bits: informationOf(hypotheses, trait), answers: answers.length > 0 ? answers : question.answers };
}
