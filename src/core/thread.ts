/** Screw threads: their names, their limits of size, and which ones are mistaken for which. */
import { pipeOutsideDiameter, pipeWindows } from "./pipe-thread";
import { inches, inMillimetres, metres, millimetres, type Metres } from "./quantity";

export type ThreadSystem = "unified" | "metric" | "taper-pipe";

export interface Thread {
  /** Canonical name: `3/8-24`, `M10x1`, `1/8-27 NPT`. Two threads are the same when their names are. */
  readonly name: string;
  readonly system: ThreadSystem;
  readonly majorDiameter: Metres;
  readonly pitch: Metres;
}

/** The sizes a caliper may honestly read: across the crests outside, across the minor diameter inside. */
export interface Window {
  readonly least: Metres;
  readonly most: Metres;
}

const UNIFIED_NAME = /^#?\s*(?:(\d+)[ -])?(\d+)\/(\d+)\s*[-x×]\s*(\d+)(?:\s*(NPT[F]?|UNF|UNC|UNS|UNEF|UN))?$/i;
const METRIC_NAME = /^M\s*(\d+(?:\.\d+)?)\s*[x×*]\s*(\d+(?:\.\d+)?)$/i;

/**
 * Reads a thread's name as people write it.
 * @param text `3/8-24`, `7/16-20 UNF`, `M10x1`, `m10 × 1.0`, `1/8-27 NPT`
 * @returns the thread, or undefined when the text names none
 */
export function threadNamed(text: string): Thread | undefined {
  const plain = text.trim();
  return metricThread(plain) ?? unifiedThread(plain);
}

function metricThread(text: string): Thread | undefined {
  const found = METRIC_NAME.exec(text);
  if (!found) return undefined;
  const [diameter, pitch] = [Number(found[1]), Number(found[2])];
  if (!(diameter > 0 && pitch > 0 && pitch < diameter / 2)) return undefined;
  return { name: `M${diameter}x${pitch}`, system: "metric", majorDiameter: millimetres(diameter), pitch: millimetres(pitch) };
}

function unifiedThread(text: string): Thread | undefined {
  const found = UNIFIED_NAME.exec(text);
  if (!found) return undefined;
  const [, whole, numerator, denominator, perInch, series] = found;
  const nominal = Number(whole ?? 0) + Number(numerator) / Number(denominator);
  if (!(nominal > 0 && Number.isFinite(nominal) && Number(perInch) > 0)) return undefined;
  const size = `${whole ? `${whole} ` : ""}${numerator}/${denominator}`;
  const pitch = inches(1 / Number(perInch));
  if (series?.toUpperCase().startsWith("NPT")) {
    const outside = pipeOutsideDiameter(size, Number(perInch));
    return outside === undefined ? undefined : { name: `${size}-${Number(perInch)} NPT`, system: "taper-pipe", majorDiameter: outside, pitch };
  }
  return { name: `${size}-${Number(perInch)}`, system: "unified", majorDiameter: inches(nominal), pitch };
}

/**
 * Limits of the major diameter of a commercial external thread: class 2A (unified) or 6g (metric).
 * @returns least and most major diameter [m]
 * @source ASME B1.1-2003 section 5: es = 0.3 Td2, Td = 0.060 P^(2/3), Td2 = 0.0015 D^(1/3) + 0.0015 LE^(1/2) + 0.015 P^(2/3), inches
 *   (from memory); ISO 965-1 table values for es of 6g and Td of grade 6 (from memory)
 */
export function externalMajorWindow(thread: Thread): Window {
  const pipe = pipeWindowsOf(thread);
  if (pipe) return { least: pipe.external[0], most: pipe.external[1] };
  if (thread.system === "metric") {
    const { deviation, majorTolerance } = metricGrades(inMillimetres(thread.pitch));
    return below(millimetres(inMillimetres(thread.majorDiameter) - deviation / 1000), millimetres(majorTolerance / 1000));
  }
  const allowance = 0.3 * pitchDiameterTolerance2A(thread);
  const tolerance = 0.06 * Math.cbrt(inchPitch(thread)) ** 2;
  return below(inches(inchDiameter(thread) - allowance), inches(tolerance));
}

/**
 * Limits of the minor diameter of a commercial internal thread: class 2B (unified) or 6H (metric).
 * @returns least and most minor diameter [m]
 * @source ASME B1.1-2003 section 5: least D - 1.08253175 P, tolerance 0.25 P - 0.4 P^2, inches, for 1/4 in and over (from memory);
 *   ISO 965-1 table values for TD1 of grade 6 (from memory)
 */
export function internalMinorWindow(thread: Thread): Window {
  const pipe = pipeWindowsOf(thread);
  if (pipe) return { least: pipe.internal[0], most: pipe.internal[1] };
  if (thread.system === "metric") {
    const pitch = inMillimetres(thread.pitch);
    const least = inMillimetres(thread.majorDiameter) - 1.0825318 * pitch;
    return above(millimetres(least), millimetres(metricGrades(pitch).minorTolerance / 1000));
  }
  const pitch = inchPitch(thread);
  return above(inches(inchDiameter(thread) - 1.08253175 * pitch), inches(0.25 * pitch - 0.4 * pitch ** 2));
}

/** How near two different threads must be, for one to start in the other and then strip or leak. */
export interface NearMissLimits {
  /** Largest difference of nominal diameter. */
  readonly diameter: Metres;
  /** Largest difference of pitch, as a share of the coarser pitch. */
  readonly pitchShare: number;
}

/** True when two different threads may start in one another: near in diameter and in pitch. Symmetric. */
export function isNearMiss(a: Thread, b: Thread, limits: NearMissLimits): boolean {
  if (a.name === b.name) return false;
  const apart = Math.abs(a.majorDiameter - b.majorDiameter);
  const pitchApart = Math.abs(a.pitch - b.pitch) / Math.max(a.pitch, b.pitch);
  return apart <= limits.diameter + 1e-9 && pitchApart <= limits.pitchShare + 1e-9;
}

const pipeWindowsOf = (thread: Thread) => (thread.system === "taper-pipe" ? pipeWindows(thread.name.slice(0, thread.name.indexOf("-"))) : undefined);
const inchDiameter = (thread: Thread) => thread.majorDiameter / inches(1);
const inchPitch = (thread: Thread) => thread.pitch / inches(1);
const below = (most: Metres, tolerance: Metres): Window => ({ least: metres(most - tolerance), most });
const above = (least: Metres, tolerance: Metres): Window => ({ least, most: metres(least + tolerance) });

function pitchDiameterTolerance2A(thread: Thread): number {
  const [diameter, pitch] = [inchDiameter(thread), inchPitch(thread)];
  return 0.0015 * Math.cbrt(diameter) + 0.0015 * Math.sqrt(engagementLength(thread)) + 0.015 * Math.cbrt(pitch) ** 2;
}

/** Length of engagement behind the tabulated limits: D for the coarse and fine series, 9 pitches otherwise (ASME B1.1 section 5.8, from memory). */
function engagementLength(thread: Thread): number {
  return COARSE_OR_FINE.has(thread.name) ? inchDiameter(thread) : 9 * inchPitch(thread);
}

const COARSE_OR_FINE = new Set([
  "1/4-20", "1/4-28", "5/16-18", "5/16-24", "3/8-16", "3/8-24", "7/16-14", "7/16-20",
  "1/2-13", "1/2-20", "9/16-12", "9/16-18", "5/8-11", "5/8-18", "3/4-10", "3/4-16",
]);

interface MetricGrades {
  readonly deviation: number;
  readonly majorTolerance: number;
  readonly minorTolerance: number;
}

/** Micrometres by pitch in millimetres: es of 6g, Td of grade 6, TD1 of grade 6 (ISO 965-1, from memory; the standard rounds its own formulas). */
const METRIC_GRADES: ReadonlyMap<number, MetricGrades> = new Map(
  [
    [0.5, 20, 106, 140], [0.75, 22, 140, 190], [1, 26, 180, 236], [1.25, 28, 212, 265], [1.5, 32, 236, 300], [1.75, 34, 265, 335], [2, 38, 280, 375],
  ].map(([pitch = 0, deviation = 0, majorTolerance = 0, minorTolerance = 0]) => [pitch, { deviation, majorTolerance, minorTolerance }]),
);

/** The table's row, or the formulas behind it for a pitch it lacks. */
function metricGrades(pitch: number): MetricGrades {
  return (
    METRIC_GRADES.get(Number(pitch.toFixed(4))) ?? {
      deviation: 15 + 11 * pitch,
      majorTolerance: 180 * Math.cbrt(pitch) ** 2 - 3.15 / Math.sqrt(pitch),
      minorTolerance: pitch >= 1 ? 230 * pitch ** 0.7 : 433 * pitch - 190 * pitch ** 1.22,
    }
  );
}
