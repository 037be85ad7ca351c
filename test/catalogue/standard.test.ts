import { inMillimetres, inches, inInches, inPsi, millimetres } from "../../src/core/quantity";
import { sameTube } from "../../src/core/tube";
import { standardNuts } from "../../src/catalogue/standard/nuts";
import { standardThreads } from "../../src/catalogue/standard/threads";
import { standardTube } from "../../src/catalogue/standard/tube";

const threadsFor = (tube: number, seat: string) => standardNuts.filter((nut) => sameTube(nut.tube, inches(tube)) && nut.face.seat === seat).map((nut) => nut.face.thread.name);

// Every thread whose windows are checked in test/core/thread.test.ts, and three more that lines of this trade use.
test("the shipped threads are the data set's and the three added ones, each once, each with its source", () => {
  const names = standardThreads.map(({ thread }) => thread.name);
  expect([...names].sort()).toEqual(
    ["5/16-28", "5/16-24", "M8x1", "3/8-24", "3/8-20", "M10x1", "M10x1.25", "M11x1.5", "7/16-24", "7/16-20", "M12x1", "M12x1.25", "M12x1.5", "1/2-20", "1/2-24", "M13x1.5", "M14x1.5", "9/16-18", "9/16-20", "5/8-18", "M16x1.5", "1/8-27 NPT", "11/16-18", "3/4-18"].sort(),
  );
  expect(standardThreads.filter(({ source }) => source === "")).toEqual([]);
});

// Series of the data set; check value B44 (Machinery's Handbook 29th ed. p. 1816, transcribed in a public script): these six are UNF, and 7/16-24 is not.
test("the fine series is what the handbook lists", () => {
  expect(standardThreads.filter(({ series }) => series === "UNF").map(({ thread }) => thread.name)).toEqual(["5/16-24", "3/8-24", "7/16-20", "1/2-20", "9/16-18", "5/8-18"]);
});

// Check value B43: the thread chart of SAE J512 inverted flare (from memory) by thread; tube sizes from issue text and design (1/8 to 1/2 in).
test.each([
  [1 / 8, "5/16-28"],
  [3 / 16, "3/8-24"],
  [1 / 4, "7/16-24"],
  [5 / 16, "1/2-20"],
  [3 / 8, "5/8-18"],
  [7 / 16, "11/16-18"],
  [1 / 2, "3/4-18"],
])("the first nut of %d in tube is %s, as SAE J512 has it", (tube, thread) => {
  const [first] = standardNuts.filter((nut) => sameTube(nut.tube, inches(tube)));
  expect(first).toMatchObject({ face: { thread: { name: thread }, seat: "inverted-flare-45", gender: "male" } });
  expect(first?.source).toMatch(/^SAE J512/);
});

// Common practice, no source.
test("oversize nuts: 3/16 tube in the ports of masters, 1/4 tube in the two biggest, and no 1/4 nut of 3/8-24, whose bore would leave no wall", () => {
  expect(threadsFor(3 / 16, "inverted-flare-45")).toEqual(["3/8-24", "7/16-24", "1/2-20", "9/16-18"]);
  expect(threadsFor(1 / 4, "inverted-flare-45")).toEqual(["7/16-24", "1/2-20", "9/16-18"]);
});

test("bubble nuts: 4.75 mm (3/16 in), 6 mm (which is not 1/4 in) and 8 mm (5/16 in)", () => {
  expect(threadsFor(3 / 16, "bubble-iso")).toEqual(["M10x1", "M11x1.5", "M12x1"]);
  expect(threadsFor(1 / 4, "bubble-iso")).toEqual([]);
  expect(threadsFor(5 / 16, "bubble-iso")).toEqual(["M14x1.5"]);
  expect(standardNuts.filter((nut) => sameTube(nut.tube, millimetres(6))).map((nut) => nut.face.thread.name)).toEqual(["M12x1"]);
});

test("every shipped nut and tube has a name of its own and a source", () => {
  for (const rows of [standardNuts, standardTube]) {
    expect(new Set(rows.map(({ name }) => name)).size).toBe(rows.length);
    expect(rows.filter(({ source }) => !source)).toEqual([]);
  }
  expect(standardNuts[1]?.name).toBe("N-3/16-3/8-24");
});

// Check values B02 to B06: inside diameters after SAE J526 nominal walls (from memory), mm.
test.each([
  [1 / 8, 1.905],
  [3 / 16, 3.34],
  [1 / 4, 4.928],
  [5 / 16, 6.515],
  [3 / 8, 8.103],
])("mild steel tube of %d in has a bore of %d mm", (outside, bore) => {
  const [tube] = standardTube.filter((one) => one.material === "mild steel" && sameTube(one.outsideDiameter, inches(outside)));
  expect(inMillimetres(tube?.outsideDiameter ?? millimetres(NaN)) - 2 * inMillimetres(tube?.wall ?? millimetres(NaN))).toBeCloseTo(bore, 3);
  expect(inPsi(tube?.yieldStrength ?? (NaN as never))).toBeCloseTo(25_000, 6); // B07: SAE J526 least yield strength (from memory)
});

test("stainless and copper-nickel ship in 3/16 and 1/4 in at 0.028 in wall; plain copper does not ship", () => {
  for (const material of ["stainless", "copper-nickel"]) {
    const walls = [3 / 16, 1 / 4].map((size) => standardTube.find((one) => one.material === material && sameTube(one.outsideDiameter, inches(size)))?.wall);
    expect(walls.map((wall) => Number(inInches(wall ?? inches(NaN)).toFixed(6)))).toEqual([0.028, 0.028]);
  }
  expect(standardTube.some(({ material }) => material === "copper")).toBe(false);
});
