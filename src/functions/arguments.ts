/** Reads single arguments of worksheet functions; what cannot be read is said with what is accepted. */
import { GENDERS, SEATS, type Gender, type JointFace, type Seat } from "../core/joint";
import { inches, millimetres, type Metres } from "../core/quantity";
import { threadNamed, type Thread } from "../core/thread";
import { nominalTube } from "../core/tube";
import { badValue } from "./answer";

/** A number, or text that is one: `0.1875`, `3/16`, `1 1/8`. Blank (also 0, as blanks arrive) is undefined. */
export function readNumber(name: string, value: unknown): number | undefined {
  if (value === undefined || value === null || value === "" || value === 0) return undefined;
  const number = typeof value === "number" ? value : numberInText(String(value));
  if (number === undefined || !Number.isFinite(number) || number <= 0) throw badValue(`${name}: read "${String(value)}"; accepted: a number above 0.`);
  if (number < LEAST || number > MOST) throw badValue(`${name}: read "${String(value)}"; accepted: a number from a thousand-millionth to a thousand million.`);
  return number;
}

/** Nothing measured on a vehicle lies beyond, in whatever unit; quotients and powers of such numbers stay numbers. */
const [LEAST, MOST] = [1e-9, 1e9];

function numberInText(text: string): number | undefined {
  const fraction = /^\s*(?:(\d+)\s+)?(\d+)\s*\/\s*(\d+)\s*$/.exec(text);
  if (fraction) return Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3]);
  return /^\s*\d*\.?\d+\s*$/.test(text) ? Number(text) : undefined;
}

/** `in` (threads per inch for a pitch) or `mm`; left out it is `in`. */
export function readUnit(value: unknown): "in" | "mm" {
  const text = String(value ?? "").trim().toLowerCase();
  if (text === "" || text === "0" || text === "in") return "in";
  if (text === "mm") return "mm";
  throw badValue(`unit: read "${String(value)}"; accepted: "in" or "mm".`);
}

/** Largest thread or tube in inches that anyone would ask about; more than this is millimetres without the unit said. */
const LARGEST_IN_INCHES = 2;

export function readLength(name: string, value: unknown, unit: "in" | "mm"): Metres {
  const number = readNumber(name, value);
  if (number === undefined) throw badValue(`${name}: read nothing; accepted: a measurement in ${unit}.`);
  if (unit === "in" && number > LARGEST_IN_INCHES) throw badValue(`${name}: ${number} in is larger than any listed thread; for millimetres give the unit "mm".`);
  return unit === "in" ? inches(number) : millimetres(number);
}

/** A tube size: inches as a number or a fraction, or text with its unit (`4.75 mm`, `3/16 in`). */
export function readTube(value: unknown): Metres {
  const withUnit = typeof value === "string" ? /^(.*?)\s*(mm|in|")\s*$/i.exec(value) : null;
  if (!withUnit) return nominalTube(readLength("tube", value, "in"));
  return nominalTube(readLength("tube", withUnit[1], withUnit[2]?.toLowerCase() === "mm" ? "mm" : "in"));
}

export function readThreadName(value: unknown): Thread {
  const thread = threadNamed(String(value ?? ""));
  if (!thread) throw badValue(`thread: read "${String(value ?? "")}"; accepted: a thread such as 3/8-24, M10x1 or 1/8-27 NPT.`);
  return thread;
}

export function readSeat(value: unknown): Seat {
  const plain = String(value ?? "").trim().toLowerCase().replaceAll(" ", "-");
  const seat = SEATS.find((name) => name === plain);
  if (!seat) throw badValue(`seat: read "${String(value ?? "")}"; accepted: ${SEATS.join(", ")}.`);
  return seat;
}

export function readGender(name: string, value: unknown, otherwise: Gender): Gender {
  const plain = String(value ?? "").trim().toLowerCase();
  if (plain === "" || plain === "0") return otherwise;
  const gender = GENDERS.find((one) => one === plain);
  if (!gender) throw badValue(`${name}: read "${String(value)}"; accepted: ${GENDERS.join(" or ")}.`);
  return gender;
}

export const readFace = ({ thread, seat, gender }: { thread: unknown; seat: unknown; gender: Gender }): JointFace => ({ thread: readThreadName(thread), seat: readSeat(seat), gender });
