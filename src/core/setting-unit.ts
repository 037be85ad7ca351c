/** The units in which the Settings table states its figures. */
export type SettingUnit =
  | "in" | "ft" | "mm" | "m" | "psi" | "bar" | "%" | "lbf" | "N" | "mph" | "km/h" | "s" | "g" | "ratio" | "cc/ft" | "1/MPa" | "year" | "weeks" | "money" | "count" | "text";
