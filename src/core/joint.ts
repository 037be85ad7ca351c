/** What meets at a joint: thread, seat and gender, and the flare a tube must carry to seal there. */
import type { Thread } from "./thread";

export const SEATS = ["inverted-flare-45", "bubble-iso", "flare-37", "flare-45", "banjo", "o-ring", "pipe-taper", "compression"] as const;
export type Seat = (typeof SEATS)[number];

export const GENDERS = ["female", "male"] as const;
export type Gender = (typeof GENDERS)[number];

/** One side of a threaded joint. */
export interface JointFace {
  readonly thread: Thread;
  readonly seat: Seat;
  readonly gender: Gender;
}

/** The end formed on the tube for each seat. */
export const FLARES = ["double 45°", "bubble", "single 37°", "banjo", "bead", "plain"] as const;
export type Flare = (typeof FLARES)[number];

const FLARE_FOR_SEAT: Readonly<Record<Seat, Flare>> = {
  "inverted-flare-45": "double 45°",
  "flare-45": "double 45°",
  "bubble-iso": "bubble",
  "flare-37": "single 37°",
  banjo: "banjo",
  "o-ring": "bead",
  "pipe-taper": "plain",
  compression: "plain",
};

/** The flare that seals on a seat: a 45° inverted flare is doubled, a 37° flare is made single (SAE J512 and J514, from memory). */
export const flareFor = (seat: Seat): Flare => FLARE_FOR_SEAT[seat];

/**
 * The gender of a port whose row does not say: a 37° or 45° flare port and a compression port are male under a female nut,
 * every other port of a brake part is a female hole; its nut is the opposite (SAE J512, J514, from memory).
 */
export const usualPortGender = (seat: Seat | undefined): Gender => (seat === "flare-37" || seat === "flare-45" || seat === "compression" ? "male" : "female");

export const opposite = (gender: Gender): Gender => (gender === "female" ? "male" : "female");

/** A joint seals only when thread and seat are the same and the genders differ: a thread that fits on another seat leaks. Symmetric. */
export const mates = (a: JointFace, b: JointFace): boolean => a.thread.name === b.thread.name && a.seat === b.seat && a.gender !== b.gender;

/** Names a face for maps; two faces are the same when their keys are. */
export const faceKey = (face: JointFace): string => `${face.thread.name}|${face.seat}|${face.gender}`;

const SEAT_WORDS: Readonly<Record<Seat, string>> = {
  "inverted-flare-45": "45° inverted flare", "bubble-iso": "ISO bubble", "flare-37": "37° flare", "flare-45": "45° flare",
  banjo: "banjo", "o-ring": "O-ring", "pipe-taper": "taper pipe", compression: "compression",
};

export const saySeat = (seat: Seat): string => SEAT_WORDS[seat];

export const sayFace = (face: JointFace): string => `${face.thread.name} ${saySeat(face.seat)}, ${face.gender}`;
