/** How a rule's cases are written and run: what the car is, and every code it must raise, worst first. */
import type { FindingCode } from "../../../src/core/finding";
import { aboveNoteAnd, type CarCells, type Shop } from "../workshop";

/** A sentence, the cells and parts that differ from the workshop's car, and the codes above a note and of the rule itself, split by spaces. */
export type Case = readonly [says: string, cells: CarCells, codes: string, shop?: Shop];

/** Cases of one rule: at least one that fires it and one near miss that does not. */
export const rule = (code: FindingCode, cases: readonly Case[]): void =>
  describe(code, () => {
    test("has a case that fires and a near miss", () => {
      const fires = cases.map(([, , codes]) => codes.split(" ").includes(code));
      expect([fires.includes(true), fires.includes(false)]).toEqual([true, true]);
    });
    test.each(cases.map(([says, ...rest]) => [says, rest] as const))("%s", (_, [cells, codes, shop]) => expect(aboveNoteAnd(code, cells, shop)).toBe(codes));
  });

