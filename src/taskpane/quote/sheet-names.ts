/** Names of the sheets that quotes and cut lists are written into: `Quote Car 3`, then `Quote Car 3 rev 2`. */

/** Excel's limit is 31; the rest is left for " rev 9999". */
const MOST_OF_NAME = 22;

const base = (kind: string, subject: string): string => `${kind} ${subject}`.replace(/[[\]:*?/\\]/g, " ").replace(/\s+/g, " ").slice(0, MOST_OF_NAME).trim();

/** @param revision the first has no number in the name */
export const sheetName = (kind: string, subject: string, revision: number): string => `${base(kind, subject)}${revision === 1 ? "" : ` rev ${revision}`}`;

/** One more than the highest revision that the workbook has a sheet for; 1 when there is none. Names are compared without regard to case. */
export function nextRevision(kind: string, subject: string, sheets: readonly string[]): number {
  const own = base(kind, subject).toLowerCase();
  const revisions = sheets.map((name) => {
    const [, before = "", number] = /^(.*?)(?: rev (\d+))?$/i.exec(name.toLowerCase()) ?? [];
    return before === own ? Number(number ?? 1) : 0;
  });
  return Math.max(0, ...revisions) + 1;
}
