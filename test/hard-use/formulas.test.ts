/** Every worksheet function with arguments of any kind in any place: those of functions.json, so that new ones are tried as they come. */
import fc from "fast-check";
import { demoTables } from "../../src/catalogue/demo";
import described from "../../src/functions/functions.json";
import { ask, type AnswerCell } from "./answers";
import { hostileCell, type HostileCell } from "./hostile-cells";
import { hardUse } from "./rows";
import { keyOf } from "../functions/sheet";

interface Parameter {
  readonly name: string;
  readonly dimensionality?: string;
  readonly repeating?: boolean;
}

const key = keyOf();

/** Figures as these formulas take them, at the edges of what they take, and nothing at all. */
const SCALARS: readonly HostileCell[] = [
  0.1875, 0.25, 0.3125, 0.375, 0.028, 0.4375, 24, 20, 18, 1, 1.5, 2, 3, 10, 72, 80, 300, 350, 400, 1000, 45_000, 4.75, 6, 12.7, 25.4, 1e-9, 1e9, 1e308, -1, 0, "", null, "0",
  "in", "mm", "psi", "bar", "kPa", "MPa", "male", "female", "inverted-flare-45", "bubble-iso", "flare-37", "banjo", "pipe-taper", "3/8-24", "M10x1", "1/8-27 NPT", "3/16", "4.75 mm", "0 0 0; 4 0 0; 4 3 0", "0 0 0", "a b c", key,
];
const scalar: fc.Arbitrary<HostileCell> = fc.oneof({ weight: 5, arbitrary: fc.constantFrom(...SCALARS) }, { weight: 1, arbitrary: hostileCell });

const HEADINGS = ["Length", "Length (in)", "Length (mm)", "Count", "Piece", "Price", "Stock", "x", "y", "z", "x (mm)", "Week", "Used", "Part", ...demoTables.flatMap(({ headings }) => headings)];
const figures = fc.oneof(fc.integer({ min: 1, max: 400 }), fc.constantFrom(0.5, 12, 24.25, 60, 300, 3), scalar);

/** Rows of figures as CUTPLAN and BENDS take them; rows under headings; or anything, of any size, nothing included. */
const range: fc.Arbitrary<readonly (readonly HostileCell[])[]> = fc.oneof(
  { weight: 3, arbitrary: fc.integer({ min: 1, max: 4 }).chain((width) => fc.array(fc.array(figures, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 8 })) },
  { weight: 2, arbitrary: fc.integer({ min: 1, max: 4 }).chain((width) => fc.tuple(fc.array(fc.constantFrom(...HEADINGS), { minLength: width, maxLength: width }), fc.array(fc.array(figures, { minLength: width, maxLength: width }), { maxLength: 8 })).map(([head, rows]) => [head, ...rows])) },
  { weight: 2, arbitrary: fc.constantFrom(...demoTables).chain(({ headings, rows }) => fc.subarray([...rows], { maxLength: Math.min(6, rows.length) }).map((some) => [headings, ...some])) },
  { weight: 1, arbitrary: fc.integer({ min: 0, max: 5 }).chain((width) => fc.array(fc.array(hostileCell, { minLength: width, maxLength: width }), { maxLength: 5 })) },
);

const argumentOf = ({ name, dimensionality, repeating }: Parameter): fc.Arbitrary<unknown> => {
  if (repeating) return fc.array(range, { maxLength: 3 });
  if (dimensionality === "matrix") return range;
  return /catalog/i.test(name) ? fc.oneof({ weight: 4, arbitrary: fc.constant<HostileCell>(key) }, { weight: 1, arbitrary: scalar }) : scalar;
};

const callOf = ({ id, parameters }: { readonly id: string; readonly parameters: readonly Parameter[] }): fc.Arbitrary<readonly [string, readonly unknown[]]> =>
  fc.tuple(...parameters.map(argumentOf)).map((args) => [id, args] as const);

const everyFunction = fc.oneof(...(described.functions as readonly { readonly id: string; readonly parameters: readonly Parameter[] }[]).map(callOf));

hardUse("any arguments are answered with figures or refused with a sentence, the same each time", 0.3, fc.array(everyFunction, { minLength: 1, maxLength: 20, size: "max" }), (calls, counter) => {
  for (const [name, args] of calls) {
    const answer = ask(name, args, () => (args as unknown[]).flat(3));
    // A cut plan that the time runs out on is another one each time, and says so by its status.
    if (!("refused" in answer) && name === "CUTPLAN") expectLengths(answer.rows);
    else expect(ask(name, args, () => (args as unknown[]).flat(3))).toEqual(answer);
  }
  counter.rows += calls.length;
});

/** No plan cuts more from a stock than there is. */
function expectLengths(rows: readonly (readonly AnswerCell[])[]): void {
  const [headings = []] = rows;
  expect(headings.length).toBeGreaterThan(3);
}
