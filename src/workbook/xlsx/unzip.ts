/** Unpacks a zip one file at a time, held to limits of size and ratio. */
import { Inflate, strFromU8 } from "fflate";

/** What the directory at the end of a zip says of one file in it. */
interface ZipEntry {
  readonly path: string;
  readonly isLocked: boolean;
  readonly method: number;
  readonly packed: number;
  readonly unpacked: number;
  readonly offset: number;
}

/** Limits that a file sent by a stranger is held to. */
export interface ZipLimits {
  /** Bytes of all wanted files together after unpacking. */
  readonly total: number;
  /** How many times its packed size a file may unpack to, when it is larger than `ratioFrom`. */
  readonly ratio: number;
  readonly ratioFrom: number;
}

/** Why a zip was not unpacked. */
export class ZipError extends Error {
  constructor(readonly reason: "damaged" | "locked" | "too large") {
    super(`The zip is ${reason}.`);
  }
}

/**
 * Unpacks the wanted files of a zip. No more is ever unpacked than the directory says and the limits allow: the library's own
 * one-call function believes the sizes a file claims, so that a lying one keeps it busy for minutes.
 * @throws ZipError
 */
export function unzip(bytes: Uint8Array, isWanted: (path: string) => boolean, limits: ZipLimits): ReadonlyMap<string, Uint8Array> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const entries = orDamaged(() => directory(bytes, view)).filter(({ path }) => isWanted(path));
  if (entries.some(({ isLocked }) => isLocked)) throw new ZipError("locked");
  const isBomb = ({ packed, unpacked }: ZipEntry): boolean => unpacked > limits.ratioFrom && unpacked > packed * limits.ratio;
  if (entries.reduce((sum, { unpacked }) => sum + unpacked, 0) > limits.total || entries.some(isBomb)) throw new ZipError("too large");
  return new Map(entries.map((entry) => [entry.path, orDamaged(() => contentOf(bytes, view, entry))]));
}

function orDamaged<T>(work: () => T): T {
  try {
    return work();
  } catch {
    throw new ZipError("damaged");
  }
}

const END = 0x06054b50;
const END_64 = 0x06064b50;
const LOCATOR_64 = 0x07064b50;
const ENTRY = 0x02014b50;
const LOCAL = 0x04034b50;
/** The end record with the longest comment. */
const LONGEST_END = 22 + 0xffff;

/** Sections 4.3.12 to 4.3.16 of the zip specification (APPNOTE 6.3), with the sizes of zip64 that some programs always write. */
function directory(bytes: Uint8Array, view: DataView): ZipEntry[] {
  let end = bytes.length - 22;
  const least = Math.max(0, bytes.length - LONGEST_END);
  while (end >= least && view.getUint32(end, true) !== END) end--;
  if (end < least) throw new Error("There is no directory.");
  let [count, at] = [view.getUint16(end + 10, true), view.getUint32(end + 16, true)];
  if (end >= 20 && view.getUint32(end - 20, true) === LOCATOR_64) {
    const end64 = Number(view.getBigUint64(end - 12, true));
    if (view.getUint32(end64, true) !== END_64) throw new Error("There is no directory.");
    [count, at] = [Number(view.getBigUint64(end64 + 32, true)), Number(view.getBigUint64(end64 + 48, true))];
  }
  const entries: ZipEntry[] = [];
  for (let number = 0; number < count; number++) {
    const { entry, length } = entryAt(bytes, view, at);
    entries.push(entry);
    at += length;
  }
  return entries;
}

function entryAt(bytes: Uint8Array, view: DataView, at: number): { readonly entry: ZipEntry; readonly length: number } {
  if (view.getUint32(at, true) !== ENTRY) throw new Error("The directory is cut short.");
  const flags = view.getUint16(at + 8, true);
  const [name, extra, comment] = [28, 30, 32].map((place) => view.getUint16(at + place, true)) as [number, number, number];
  // A size of all ones stands in the extra field instead, in the order size, packed size, offset.
  let more = wideSizes(view, at + 46 + name, extra);
  const size = (place: number): number => {
    const short = view.getUint32(at + place, true);
    return short === 0xffff_ffff && more < at + 46 + name + extra ? Number(view.getBigUint64((more += 8) - 8, true)) : short;
  };
  const unpacked = size(24);
  const packed = size(20);
  const offset = size(42);
  const path = strFromU8(bytes.subarray(at + 46, at + 46 + name), (flags & 0x800) === 0);
  return { entry: { path, isLocked: (flags & 1) === 1, method: view.getUint16(at + 10, true), packed, unpacked, offset }, length: 46 + name + extra + comment };
}

/** Where the sizes of the zip64 extra field begin; the end of the field when it has none. */
function wideSizes(view: DataView, from: number, length: number): number {
  for (let at = from; at + 4 <= from + length; at += 4 + view.getUint16(at + 2, true)) if (view.getUint16(at, true) === 1) return at + 4;
  return from + length;
}

/** Compressed bytes handed over at once: they unpack to 8.5 MB at most, deflate's own limit being 1032 to 1. */
const SLICE = 8192;

function contentOf(bytes: Uint8Array, view: DataView, { offset, method, packed, unpacked }: ZipEntry): Uint8Array {
  if (view.getUint32(offset, true) !== LOCAL) throw new Error("A file is missing.");
  const start = offset + 30 + view.getUint16(offset + 26, true) + view.getUint16(offset + 28, true);
  const compressed = bytes.subarray(start, start + packed);
  if (compressed.length !== packed) throw new Error("The file is cut short.");
  if (method === 0) return compressed;
  if (method !== 8) throw new Error("The file is packed in another way.");
  const content = new Uint8Array(unpacked);
  let filled = 0;
  const inflate = new Inflate((piece) => {
    content.set(piece, filled); // a RangeError when there is more than was said
    filled += piece.length;
  });
  for (let at = 0; at < packed; at += SLICE) inflate.push(compressed.subarray(at, at + SLICE), at + SLICE >= packed);
  if (filled !== unpacked) throw new Error("The file is cut short.");
  return content;
}
