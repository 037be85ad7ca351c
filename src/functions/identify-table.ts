/** What IDENTIFY answers: names for bodies that somebody saw. */
import { parseSeen, type NamedBody } from "../catalogue/parse-seen";
import { standardThreads } from "../catalogue/standard/threads";
import { sayTableError } from "../catalogue/table-error";
import type { Catalogue } from "../core/catalogue";
import { decidingMeasurement } from "../core/deciding-measurement";
import { identify, type Identification, type Identified } from "../core/identify";
import type { CellValue } from "../workbook/document";
import { badValue } from "./answer";
import { laidOut, rounded, text, type Column } from "./columns";

interface Named extends NamedBody {
  readonly rank: number | "";
  readonly notListed: number;
  readonly found?: Identification;
  readonly next?: Identification | undefined;
}

const whenFound = <V>(read: (found: Identification) => V) => ({ found }: Named): V | undefined => found && read(found);

export const identifyColumns: readonly Column<Named>[] = [
  text("Car", ({ car }) => car),
  text("Body", ({ body }) => body),
  text("Rank", ({ rank }) => rank),
  text("Component", whenFound(({ component }) => component.name)),
  text("Kind", whenFound(({ component }) => component.kind)),
  text("Matched", whenFound(({ matched }) => matched.map(({ seen, port }) => `${seen.label || "?"} = ${port.name}`).join("; "))),
  text("Unexplained", whenFound(({ unexplained }) => unexplained.map(({ label }) => label || "?").join("; "))),
  text("Not seen", whenFound(({ notSeen }) => notSeen.map(({ name, thread }) => `${name}${thread ? ` (${thread.name})` : ""}`).join("; "))),
  text("Against", whenFound(({ against }) => against.join("; "))),
  text("Deciding port", ({ found, next }) => (found && next ? decidingMeasurement(found, next).says : "")),
  text("Problem", (named) => [...identifyProblems(named), ...named.errors.map(sayTableError)].join(" ")),
  text("Probability", whenFound(({ probability }) => rounded(probability, 4))),
];

function identifyProblems({ found, rank, notListed }: Named): string[] {
  if (!found) return ["no listed body has a port like these"];
  return rank === 1 && notListed > found.probability ? [`more likely a body that Components does not list (${rounded(notListed * 100, 0)} %)`] : [];
}

const MOST_NAMES = 5;

/** Up to five names for each body seen, most probable first, and any more that are as probable as the fifth. */
export function identifyTable(catalogue: Catalogue, headings: readonly (readonly unknown[])[], rows: readonly (readonly unknown[])[]): CellValue[][] {
  const { bodies, errors } = parseSeen(headings[0] ?? [], rows);
  if (bodies.length === 0 && errors.length > 0) throw badValue(errors.map(sayTableError).join(" "));
  const threads = standardThreads.map(({ thread }) => thread);
  const named = bodies.flatMap((body): Named[] => {
    const { ranked, notListed } = identify(catalogue, threads, body);
    const shown = mostProbable(ranked);
    if (shown.length === 0) return [{ ...body, rank: "", notListed }];
    return shown.map((found, index) => ({ ...body, rank: index + 1, notListed, found, next: index === 0 ? ranked[1] : ranked[0] }));
  });
  return laidOut(identifyColumns, named, catalogue.settings.units);
}

function mostProbable(ranked: Identified["ranked"]): Identified["ranked"] {
  const least = (ranked[MOST_NAMES - 1]?.probability ?? 0) * (1 - 1e-9);
  return ranked.filter(({ probability }, index) => index < MOST_NAMES || probability >= least);
}
