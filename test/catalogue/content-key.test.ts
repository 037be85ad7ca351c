import { canonicalCell, contentHash } from "../../src/catalogue/content-key";

test("equal texts have an equal hash of 16 digits", () => {
  expect(contentHash(["a", "b"])).toBe(contentHash(new Set(["a", "b"])));
  expect(contentHash([])).toMatch(/^[0-9a-f]{16}$/);
});

test.each([
  [["ab", "c"], ["a", "bc"]],
  [["a", "b"], ["b", "a"]],
  [["a"], ["a", ""]],
  [[""], []],
  [["é"], ["e"]],
])("%p and %p differ", (a, b) => expect(contentHash(a)).not.toBe(contentHash(b)));

test("a number and its text are different cells", () => expect(canonicalCell(3)).not.toBe(canonicalCell("3")));

test("100,000 near neighbours have hashes of their own, and each half of the hash spreads them", () => {
  const hashes = Array.from({ length: 100_000 }, (_, index) => contentHash(["Price", `n${(index / 100).toFixed(2)}`]));
  expect(new Set(hashes).size).toBe(hashes.length);
  // A 32-bit half that spreads well repeats about n²/2³³ = 1.2 times; 20 repeats have no chance.
  for (const half of [hashes.map((hash) => hash.slice(0, 8)), hashes.map((hash) => hash.slice(8))]) expect(half.length - new Set(half).size).toBeLessThan(20);
});
