/** What is still open about a car: the column that would answer it, and why it matters. */
export interface Question {
  /** Table and column that would answer it. */
  readonly table: string;
  readonly column: string;
  /** What the answer is about: the car itself, or a part. */
  readonly subject: string;
  readonly ask: string;
  readonly why: string;
  /** True when runs or joints cannot be settled without the answer. */
  readonly blocks: boolean;
}

export const questionKey = (question: Question): string => `${question.table}|${question.column}|${question.subject}|${question.ask}`;
