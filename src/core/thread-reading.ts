/** Names a thread from what calipers and a pitch gauge read. */
import { metres, millimetres, type Metres } from "./quantity";
import type { Gender } from "./joint";
import { externalMajorWindow, internalMinorWindow, isNearMiss, type NearMissLimits, type Thread, type Window } from "./thread";

export interface ThreadReading {
  /** Across the crests of a male thread, across the minor diameter of a female one. */
  readonly diameter: Metres;
  readonly pitch?: Metres | undefined;
  readonly gender: Gender;
}

export interface ThreadCandidate {
  readonly thread: Thread;
  readonly window: Window;
  /** How far the reading lies outside the window; 0 inside it. */
  readonly diameterOff: Metres;
  /** Difference of pitch as a share of this thread's pitch; undefined without a pitch. */
  readonly pitchOff: number | undefined;
  readonly match: "fits" | "near miss" | "no";
  /** The candidates of this answer that this one is mistaken for. */
  readonly mistakenFor: readonly string[];
}

/** A damaged or plated thread reads up to this much low or high (common practice, no source). */
const HONEST_ERROR = millimetres(0.05);
/** A pitch gauge that sits is within this share (common practice, no source): 1.0 against 1.058 mm, the nearest pair, is 5.5 % apart. */
const SAME_PITCH = 0.02;
const REACH = millimetres(0.6);
const PITCH_REACH = 0.35;

/**
 * Every listed thread that a reading may be, nearest first; the window a caliper reads decides, not the nominal size.
 * @param threads the list to name from
 * @returns candidates within 0.6 mm of their window and, when a pitch is given, 35 % of their pitch
 */
export function readThread(threads: readonly Thread[], reading: ThreadReading, limits: NearMissLimits): ThreadCandidate[] {
  const near = threads.map((thread) => distances(thread, reading)).filter(({ diameterOff, pitchOff }) => diameterOff <= REACH && (pitchOff ?? 0) <= PITCH_REACH);
  const sorted = [...near].sort((a, b) => remoteness(a) - remoteness(b) || (a.thread.name < b.thread.name ? -1 : 1));
  const fitting = sorted.filter(fits);
  return sorted.map((candidate) => {
    const mistakenFor = sorted.filter((other) => isNearMiss(candidate.thread, other.thread, limits)).map(({ thread }) => thread.name);
    const nearMiss = fitting.some(({ thread }) => mistakenFor.includes(thread.name)) || (fitting.length === 0 && mistakenFor.length > 0);
    return { ...candidate, mistakenFor, match: fitting.includes(candidate) ? "fits" : nearMiss ? "near miss" : "no" };
  });
}

type Measured = Omit<ThreadCandidate, "match" | "mistakenFor">;

function distances(thread: Thread, { diameter, pitch, gender }: ThreadReading): Measured {
  const window = gender === "male" ? externalMajorWindow(thread) : internalMinorWindow(thread);
  const diameterOff = metres(Math.max(window.least - diameter, diameter - window.most, 0));
  return { thread, window, diameterOff, pitchOff: pitch === undefined ? undefined : Math.abs(pitch - thread.pitch) / thread.pitch };
}

const fits = ({ diameterOff, pitchOff }: Measured): boolean => diameterOff <= HONEST_ERROR + 1e-9 && (pitchOff ?? 0) <= SAME_PITCH;

/** One honest error of diameter weighs as much as one same-pitch share. */
const remoteness = ({ diameterOff, pitchOff }: Measured): number => diameterOff / HONEST_ERROR + (pitchOff ?? 0) / SAME_PITCH;
