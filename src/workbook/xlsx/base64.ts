/** Bytes as base64 and back; RFC 4648, section 4. */

const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

/** @throws Error when the text is no base64 */
export function bytesOf(base64: string): Uint8Array {
  const text = base64.replace(/\s/g, "").replace(/={1,2}$/, "");
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let bits = 0;
  let held = 0;
  let at = 0;
  for (const letter of text) {
    const value = letters.indexOf(letter);
    if (value < 0) throw new Error("This is no base64.");
    held = ((held << 6) | value) & 0xffff;
    bits += 6;
    if (bits < 8) continue;
    bits -= 8;
    bytes[at++] = (held >> bits) & 0xff;
  }
  return bytes;
}

export function base64Of(bytes: Uint8Array): string {
  const pieces: string[] = [];
  for (let at = 0; at < bytes.length; at += 3) {
    const three = ((bytes[at] ?? 0) << 16) | ((bytes[at + 1] ?? 0) << 8) | (bytes[at + 2] ?? 0);
    const four = [18, 12, 6, 0].map((shift) => letters[(three >> shift) & 63] ?? "").join("");
    const missing = Math.max(0, at + 3 - bytes.length);
    pieces.push(missing === 0 ? four : four.slice(0, 4 - missing) + "=".repeat(missing));
  }
  return pieces.join("");
}
