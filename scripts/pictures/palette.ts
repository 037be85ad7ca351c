/** Screenshots made small: PNG files (RFC 2083) of 8-bit colour rewritten with a palette of at most 256 colours. */
import { deflateSync, inflateSync } from "node:zlib";
import { crc32 } from "./crc32";

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
const MOST_COLOURS = 256;
/** A chunk is its length, its name, its data and its sum. */
const [CHUNK_HEAD, CHUNK_FRAME] = [8, 12];

/**
 * Each colour that is not in the palette becomes the nearest that is; none is far from it.
 * @param png 8 bits a channel, RGB or RGBA without transparency, not interlaced, as browsers write screenshots
 * @throws Error for another kind of PNG
 */
export function withPalette(png: Buffer): Buffer {
  const { width, height, colours } = readPixels(png);
  const palette = commonest(colours);
  const places = new Map(palette.map((colour, place) => [colour, place]));
  const rows = Buffer.alloc(height * (width + 1)); // each row opens with its filter, 0: as they are
  colours.forEach((colour, index) => {
    let place = places.get(colour);
    if (place === undefined) places.set(colour, (place = nearest(palette, colour)));
    rows[index + Math.floor(index / width) + 1] = place;
  });
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 3, 0, 0, 0], 8);
  const table = Buffer.from(palette.flatMap((colour) => [colour >> 16, (colour >> 8) & 255, colour & 255]));
  return Buffer.concat([SIGNATURE, chunk("IHDR", head), chunk("PLTE", table), chunk("IDAT", deflateSync(rows, { level: 9 })), chunk("IEND", Buffer.alloc(0))]);
}

interface Pixels {
  readonly width: number;
  readonly height: number;
  /** 0xrrggbb, row by row. */
  readonly colours: Uint32Array;
}

function readPixels(png: Buffer): Pixels {
  const chunks = chunksOf(png);
  const head = chunks.find(({ name }) => name === "IHDR")?.data ?? Buffer.alloc(13);
  const [width, height, kind] = [head.readUInt32BE(0), head.readUInt32BE(4), head[9]];
  const channels = kind === 2 ? 3 : 4;
  if (head[8] !== 8 || (kind !== 2 && kind !== 6) || head[12] !== 0) throw new Error("The picture is not a plain PNG of 8-bit colour.");
  const bytes = unfiltered(inflateSync(Buffer.concat(chunks.filter(({ name }) => name === "IDAT").map(({ data }) => data))), { stride: width * channels, height, channels });
  const colours = Uint32Array.from({ length: width * height }, (_, index) => bytes.readUIntBE(index * channels, 3));
  return { width, height, colours };
}

function chunksOf(png: Buffer): { readonly name: string; readonly data: Buffer }[] {
  const chunks = [];
  for (let at = SIGNATURE.length; at < png.length;) {
    const length = png.readUInt32BE(at);
    chunks.push({ name: png.toString("latin1", at + 4, at + CHUNK_HEAD), data: png.subarray(at + CHUNK_HEAD, at + CHUNK_HEAD + length) });
    at += length + CHUNK_FRAME;
  }
  return chunks;
}

/** Takes back the five filters of section 6 of the standard. */
function unfiltered(filtered: Buffer, { stride, height, channels }: { readonly stride: number; readonly height: number; readonly channels: number }): Buffer {
  const bytes = Buffer.alloc(stride * height);
  for (let row = 0; row < height; row++) {
    const filter = filtered[row * (stride + 1)];
    for (let x = 0; x < stride; x++) {
      const at = row * stride + x;
      const left = x < channels ? 0 : (bytes[at - channels] ?? 0);
      const up = row === 0 ? 0 : (bytes[at - stride] ?? 0);
      const corner = row === 0 || x < channels ? 0 : (bytes[at - stride - channels] ?? 0);
      const guess = [0, left, up, (left + up) >> 1, paeth(left, up, corner)][filter ?? 0] ?? 0;
      bytes[at] = (filtered[row * (stride + 1) + 1 + x] ?? 0) + guess;
    }
  }
  return bytes;
}

function paeth(left: number, up: number, corner: number): number {
  const guess = left + up - corner;
  const [toLeft, toUp, toCorner] = [Math.abs(guess - left), Math.abs(guess - up), Math.abs(guess - corner)];
  if (toLeft <= toUp && toLeft <= toCorner) return left;
  return toUp <= toCorner ? up : corner;
}

/** The commonest colours first, and none that is nearly one of those before it; as near as must be for all colours to have one like them. */
function commonest(colours: Uint32Array): readonly number[] {
  const counts = new Map<number, number>();
  for (const colour of colours) counts.set(colour, (counts.get(colour) ?? 0) + 1);
  const ordered = [...counts].sort((a, b) => b[1] - a[1] || a[0] - b[0]).map(([colour]) => colour);
  for (let apart = 0; ; apart += 4) {
    const palette: number[] = [];
    for (const colour of ordered) if (palette.length <= MOST_COLOURS && palette.every((other) => distance(colour, other) > apart * apart)) palette.push(colour);
    if (palette.length <= MOST_COLOURS) return palette;
  }
}

const distance = (one: number, other: number): number => [16, 8, 0].reduce((sum, shift) => sum + (((one >> shift) & 255) - ((other >> shift) & 255)) ** 2, 0);

function nearest(palette: readonly number[], colour: number): number {
  return palette.reduce((best, other, place) => (distance(colour, other) < distance(colour, palette[best] ?? 0) ? place : best), 0);
}

function chunk(name: string, data: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(name, "latin1"), data]);
  const whole = Buffer.alloc(named.length + 8);
  whole.writeUInt32BE(data.length, 0);
  named.copy(whole, 4);
  whole.writeUInt32BE(crc32(named), named.length + 4);
  return whole;
}
