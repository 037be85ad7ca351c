/** The sum of PNG chunks: CRC-32 of RFC 2083, section 15. */
export function crc32(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) sum = (sum >>> 8) ^ (TABLE[(sum ^ byte) & 255] ?? 0);
  return (sum ^ 0xffffffff) >>> 0;
}

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? 0xedb88320 ^ (sum >>> 1) : sum >>> 1;
  return sum;
});
