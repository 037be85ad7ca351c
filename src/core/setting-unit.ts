/** The units in which the Settings table states its figures. */
export type SettingUnit =
  | "in" | "ft" | "mm" | "m" | "psi" | "bar" | "%" | "lbf" | "N" | "mph" | "km/h" | "s" | "g" | "ratio" | "cc/ft" | "1/MPa" | "year" | "weeks" | "money" | "count" | "text";

/** One setting of a group of them, with where its default comes from. */
export interface SettingEntryOf<T, K extends keyof T = keyof T> {
  readonly key: K;
  /** As written in the Settings table. */
  readonly name: string;
  readonly value: T[K];
  /** The default as written in the table, in `unit`. */
  readonly written: string | number;
  readonly unit: SettingUnit;
  readonly choices?: readonly string[];
  /** Narrower than 0 or more. */
  readonly range?: { readonly above: number; readonly below: number; readonly says: string };
  readonly meaning: string;
  readonly source: string;
}
