/** The reader's language and country, by which numbers and days are written and read. */
import { madeOnceByKey } from "../core/made-once";

interface HostLanguages {
  readonly navigator?: { readonly language?: string };
  readonly Office?: { readonly context?: { readonly contentLanguage?: string; readonly displayLanguage?: string } };
}

/** Office's, where there is one: the language in which cells are typed, then that of its menus. Otherwise the browser's own. */
export function localeHere(host: HostLanguages = globalThis): string | undefined {
  const { contentLanguage, displayLanguage } = host.Office?.context ?? {};
  return [contentLanguage, displayLanguage, host.navigator?.language].find((tag) => tag !== undefined && isKnown(tag));
}

/** The browser takes a while over what it knows of a language, and every number in sight asks. */
const [known, marks] = [madeOnceByKey<boolean>(), madeOnceByKey<DecimalMark>()];

const isKnown = (wanted: string): boolean => known(wanted, (tag) => {
  try {
    return Intl.NumberFormat.supportedLocalesOf(tag).length > 0;
  } catch {
    return false; // not of the form of a language tag
  }
});

export type DecimalMark = "." | ",";

/** Between the whole and the rest of a number, as the reader writes it. */
export const decimalMark = (locale = localeHere()): DecimalMark => marks(locale ?? "", (tag) =>
  (new Intl.NumberFormat(tag === "" ? undefined : tag).formatToParts(1.5).find(({ type }) => type === "decimal")?.value === "," ? "," : "."));
