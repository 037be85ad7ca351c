import { deflateSync } from "node:zlib";
import { crc32 } from "../scripts/pictures/crc32";
import { withPalette } from "../scripts/pictures/palette";

/** Two rows of two pixels, unfiltered: red, green; blue, and a red one step off. */
const rows = Buffer.from([0, 255, 0, 0, 0, 255, 0, 0, 0, 0, 255, 254, 0, 0]);
const chunk = (name: string, data: Buffer): Buffer => {
  const frame = Buffer.alloc(8);
  frame.writeUInt32BE(data.length, 0);
  frame.write(name, 4, "latin1");
  return Buffer.concat([frame, data, Buffer.alloc(4)]);
};
const picture = (head: readonly number[]): Buffer => Buffer.concat([Buffer.alloc(8), chunk("IHDR", Buffer.from(head)), chunk("IDAT", deflateSync(rows)), chunk("IEND", Buffer.alloc(0))]);

test("a picture of few colours keeps each of them, in a palette", () => {
  const small = withPalette(picture([0, 0, 0, 2, 0, 0, 0, 2, 8, 2, 0, 0, 0]));
  expect(small.subarray(1, 4).toString()).toBe("PNG");
  expect([small[24], small[25]]).toEqual([8, 3]); // depth, and colours by a palette (RFC 2083, 4.1.1)
  const start = small.indexOf("PLTE") + 4;
  expect(new Set([0, 3, 6, 9].map((at) => small.subarray(start + at, start + at + 3).toString("hex")))).toEqual(new Set(["0000ff", "00ff00", "fe0000", "ff0000"]));
});

test("a picture of another kind is refused", () => {
  expect(() => withPalette(picture([0, 0, 0, 2, 0, 0, 0, 2, 16, 2, 0, 0, 0]))).toThrow("8-bit colour");
});

test("the sum of a chunk is CRC-32", () => {
  expect(crc32(Buffer.from("123456789"))).toBe(0xcbf43926); // the check value of CRC-32, from memory; IEND's own sum stands in every PNG file
  expect(crc32(Buffer.from("IEND"))).toBe(0xae426082);
});
