import fc from "fast-check";
import { demoTables } from "../../src/catalogue/demo";
import { parseCatalogue } from "../../src/catalogue/parse-catalogue";
import { standardThreads } from "../../src/catalogue/standard/threads";
import { catalogueTables } from "../../src/catalogue/table-specs";
import type { Component, Port } from "../../src/core/component";
import { decidingMeasurement } from "../../src/core/deciding-measurement";
import { identify, type Identification } from "../../src/core/identify";
import { inches, metres, millimetres, type Metres } from "../../src/core/quantity";
import { normalBelow, readingLikelihood, threadProbabilities } from "../../src/core/reading-likelihood";
import type { SeenBody, SeenPort } from "../../src/core/seen-body";
import { defaultSettings } from "../../src/core/settings";
import { externalMajorWindow, internalMinorWindow, threadNamed, type Thread, type Window } from "../../src/core/thread";
import { property } from "./seeded";
import { catalogueOf } from "./workshop";

const threads = standardThreads.map(({ thread }) => thread);
const demo = parseCatalogue(demoTables.filter(({ name }) => catalogueTables.some((spec) => spec.name === name))).catalogue;
const named = (text: string): Thread => {
  const thread = threadNamed(text);
  if (!thread) throw new Error(text);
  return thread;
};
const spread = { diameter: defaultSettings.diameterSpread, pitch: defaultSettings.pitchSpread };

describe("the likelihood of a reading", () => {
  // Φ(1) = 0.841345, Φ(1.96) = 0.975002, Φ(-0.5) = 0.308538 (tables of the normal distribution).
  test.each([[0, 0.5], [1, 0.841345], [1.96, 0.975002], [-0.5, 0.308538], [-8, 0], [8, 1]])("the normal distribution below %d is %d", (value, share) => expect(normalBelow(value)).toBeCloseTo(share, 5));

  test("in the middle of a window it is one over the window's width, at its edge half of that", () => {
    const { least, most } = internalMinorWindow(named("1/2-20"));
    const width = most - least;
    expect(readingLikelihood(named("1/2-20"), "female", { diameter: metres((least + most) / 2) }, spread) * width).toBeCloseTo(2 * normalBelow(width / 2 / spread.diameter) - 1, 9);
    expect(readingLikelihood(named("1/2-20"), "female", { diameter: most }, spread) * width).toBeCloseTo(0.5, 3);
  });

  test("one spread off the pitch costs a factor of e to the half", () => {
    const [{ pitch, ...rest }, diameter] = [named("3/8-24"), millimetres(8.5)];
    const at = (share: number): number => readingLikelihood({ ...rest, pitch }, "female", { diameter, pitch: metres(pitch * (1 + share)) }, spread);
    expect(at(0) / at(0.02)).toBeCloseTo(Math.exp(0.5), 9);
  });

  // The normal density at its middle is 1 over the spread times the root of 2π: 0.398942 over the spread (tables of the normal distribution).
  test("the pitch itself multiplies by the density of a normal error at its middle", () => {
    const [thread, diameter] = [named("3/8-24"), millimetres(8.5)];
    expect(readingLikelihood(thread, "female", { diameter, pitch: thread.pitch }, spread) / readingLikelihood(thread, "female", { diameter }, spread)).toBeCloseTo(0.398942 / spread.pitch, 3);
  });
});

describe("one thread", () => {
  const probable = (diameter: Metres, pitch?: Metres): Record<string, number> => Object.fromEntries(threadProbabilities(threads, "male", { diameter, pitch }, spread).map((one, index) => [threads[index]?.name ?? "", one]));

  test("11.0 mm outside without a pitch leaves M11x1.5, 7/16-20 and 7/16-24 all open", () => {
    const found = probable(millimetres(11));
    for (const name of ["M11x1.5", "7/16-20", "7/16-24"]) expect(found[name]).toBeGreaterThan(0.05);
    for (const name of ["M11x1.5", "7/16-20", "7/16-24"]) expect(found[name]).toBeLessThan(0.6);
  });

  test.each([["M11x1.5", millimetres(1.5)], ["7/16-20", inches(1 / 20)], ["7/16-24", inches(1 / 24)]])("with its pitch it is %s", (name, pitch) => expect(probable(millimetres(11), pitch)[name]).toBeGreaterThan(0.99));

  test("between 1/2-20 and M13x1.5, 0.06 mm apart outside, neither is certain", () => {
    const [half, thirteen] = [externalMajorWindow(named("1/2-20")), externalMajorWindow(named("M13x1.5"))];
    expect(thirteen.least - half.most).toBeCloseTo(0.00006, 4);
    const found = probable(metres((half.most + thirteen.least) / 2));
    expect([found["1/2-20"], found["M13x1.5"]].every((one) => (one ?? 0) > 0.2)).toBe(true);
  });
});

const port = (label: string, millimetre: number, more: Partial<SeenPort> = {}): SeenPort => ({ label, diameter: millimetres(millimetre), ...more });
const seen = (...ports: readonly SeenPort[]): SeenBody => ({ ports });
const names = (ranked: readonly Identification[]): string[] => ranked.map(({ component }) => component.name);
const probability = (body: SeenBody, name: string): number => identify(demo, threads, body).ranked.find(({ component }) => component.name === name)?.probability ?? 0;

// Minor diameters inside, ASME B1.1 and ISO 965 as thread.ts has them: 1/2-20 11.325 to 11.617 mm, 9/16-18 12.760 to 13.081, 7/16-24 9.967 to 10.214.
const front = port("A", 11.64); // 0.02 above its window
const rearOfLater = port("B", 12.74); // 0.02 below
const rearOut = port("C", 10.23); // 0.016 above

test("a later combination valve is named from three caliper readings, each a little off; its twins of the same ports share the odds", () => {
  const { ranked, notListed } = identify(demo, threads, seen(front, rearOfLater, rearOut));
  expect(names(ranked.slice(0, 3))).toEqual(["CV-L", "CV-N", "CV-X"]);
  expect(ranked.slice(0, 3).reduce((sum, one) => sum + one.probability, 0)).toBeGreaterThan(0.8);
  expect(ranked[0]?.probability).toBeLessThan(0.34);
  expect(ranked[0]?.matched.map(({ seen: { label }, port: { name } }) => `${label} ${name}`)).toEqual(["A Front in", "B Rear in", "C Rear out"]);
  expect(notListed).toBeLessThan(0.2);
});

test("parts with the same odds come by name, however the catalogue lists them", () => {
  const reversed = { ...demo, components: new Map([...demo.components].reverse()) };
  expect(names(identify(reversed, threads, seen(front, rearOfLater, rearOut)).ranked.slice(0, 3))).toEqual(["CV-L", "CV-N", "CV-X"]);
});

test("a port for bleeding is none that a line goes to: it is not expected to be seen, nor does it decide", () => {
  const shop = catalogueOf({ parts: ["PLAIN union @valve | <A 3/8-24", "BLED union @valve | <A 3/8-24 | >B 1/4-28"], workshopParts: [] });
  const components = new Map([...shop.components].map(([name, one]) => [name, { ...one, ports: one.ports.map((each) => (each.name === "B" ? { ...each, use: "bleed" as const } : each)) }]));
  const { ranked } = identify({ ...shop, components }, threads, seen(port("A", 8.5)));
  const [first, second] = ranked;
  expect([first?.probability, first?.notSeen]).toEqual([second?.probability, []]);
  expect(first && second && decidingMeasurement(first, second).decides).toBe(false);
});

test("an early block differs from it by one port, and that port is what to measure", () => {
  const early = identify(demo, threads, seen(front, port("B", 11.45), rearOut)).ranked;
  expect(names(early.slice(0, 2))).toEqual(["BLK-E", "BLK-EP"]);
  const [block, valve] = ["BLK-E", "CV-L"].map((name) => identify(demo, threads, seen(front, rearOut)).ranked.find(({ component }) => component.name === name));
  if (!block || !valve) throw new Error("both have these two ports");
  expect(decidingMeasurement(block, valve)).toEqual({ decides: true, says: "Rear in: 1/2-20 on BLK-E, 9/16-18 on CV-L" });
});

test("a metric master is named from two ports and their pitch", () => {
  const { ranked } = identify(demo, threads, seen(port("A", 11.0, { pitch: millimetres(1) }), port("B", 9.05, { pitch: millimetres(1) })));
  expect(ranked[0]?.component.name).toBe("MC-M2");
  expect(ranked[0]?.probability).toBeGreaterThan(0.9);
});

test("a reading that fits nothing names nothing", () => {
  expect(identify(demo, threads, seen(port("A", 20.1)))).toEqual({ ranked: [], notListed: 1 });
});

test("two ports that fit no listed body together are more likely of a body that is not listed", () => {
  // 5/8-18 and 1/4-28 stand on nothing in the demo; one of the ports is 3/8-24 so that something matches.
  const { ranked, notListed } = identify(demo, threads, seen(port("A", 14.5), port("B", 14.5), port("C", 8.5)));
  expect(ranked.length).toBeGreaterThan(0);
  expect(notListed).toBeGreaterThan(0.9);
});

test("a thread somebody is sure of counts for more than a reading", () => {
  const sure: SeenPort = { label: "B", thread: named("9/16-18") };
  expect(probability(seen(front, sure, rearOut), "BLK-E")).toBeLessThan(probability(seen(front, port("B", 12.4), rearOut), "BLK-E") + 1e-9);
  const three = ["CV-L", "CV-N", "CV-X"].map((name) => probability(seen(front, sure, rearOut), name));
  expect(three.reduce((sum, one) => sum + one, 0)).toBeGreaterThan(0.8);
});

test("a wire or none tells a block with a switch from one without, and so does where it is mounted", () => {
  const ports = [front, port("B", 11.45), rearOut];
  expect(probability({ ports, wire: true }, "BLK-E")).toBeGreaterThan(10 * probability({ ports, wire: true }, "BLK-EP"));
  expect(probability({ ports, wire: false }, "BLK-EP")).toBeGreaterThan(10 * probability({ ports, wire: false }, "BLK-E"));
  expect(probability({ ports: [front, rearOut], place: "valve" }, "CV-L")).toBeGreaterThan(10 * probability({ ports: [front, rearOut], place: "frame-front" }, "CV-L"));
  const [first, second] = identify(demo, threads, { ports }).ranked;
  expect(first && second && decidingMeasurement(first, second)).toEqual({ decides: true, says: "whether a wire goes to it: yes for BLK-E, no for BLK-EP" });
});

test("the side of a port and its gender speak for the part that has it so", () => {
  const catalogue = catalogueOf({ parts: ["LEFT union @valve | <A 3/8-24 male | >B 3/8-24", "RIGHT union @valve | <A 3/8-24 | >B 3/8-24"], workshopParts: [] });
  const of = (name: string): number => identify(catalogue, threads, seen(port("A", 9.4, { gender: "male" }), port("B", 8.5, { gender: "female" }))).ranked.find(({ component }) => component.name === name)?.probability ?? 0;
  expect(of("LEFT")).toBeGreaterThan(0.9);
  expect(of("RIGHT")).toBeLessThan(0.05);
});

test("bodies with the same ports are told apart by nothing outside, and it says so", () => {
  const [first, second] = identify(demo, threads, seen(front, rearOfLater, rearOut)).ranked;
  expect(first && second && decidingMeasurement(first, second)).toEqual({ decides: false, says: "none: CV-N has the same ports and other contents" });
});

describe("what tells two bodies apart", () => {
  /** Two bodies by their ports, of which all were seen, or all but those named. */
  const between = (one: string, other: string, unseen: readonly string[] = []): ReturnType<typeof decidingMeasurement> => {
    const { components } = catalogueOf({ parts: [`ONE union @valve | ${one}`, `TWO union @valve | ${other}`], workshopParts: [] });
    const [first, second] = ["ONE", "TWO"].map((name): Identification => {
      const component = [...components.values()].find((each) => each.name === name);
      if (!component) throw new Error(name);
      return { component, probability: 0.5, matched: [], unexplained: [], notSeen: component.ports.filter((each) => unseen.includes(`${name} ${each.name}`)), against: [] };
    });
    if (!first || !second) throw new Error("two bodies");
    return decidingMeasurement(first, second);
  };

  // Minor diameters inside, ASME B1.1: 3/8-24 8.382 to 8.636 mm, 7/16-24 9.967 to 10.214, 1/2-20 11.325 to 11.617: 3/8-24 lies farther from 1/2-20.
  test("the port whose thread lies farthest from the other's, or one that nobody has looked at yet", () => {
    expect(between("<A 7/16-24 | >B 3/8-24", "<A 1/2-20 | >B 1/2-20").says).toBe("B: 3/8-24 on ONE, 1/2-20 on TWO");
    expect(between("<A 7/16-24 | >B 3/8-24", "<A 1/2-20 | >B 1/2-20", ["ONE A"]).says).toBe("A: 7/16-24 on ONE, 1/2-20 on TWO");
  });

  // Outside 3/8-16 and 3/8-24 share diameters, M10x1.5 (9.732 to 9.968 mm, ISO 965) lies 0.23 above both; inside M10x1.5 (8.376 to 8.676) covers 3/8-24, and 3/8-16 (7.798 to 8.153) lies 0.23 below.
  test("outside threads are told apart by the diameters outside, inside ones by those inside", () => {
    expect(between("<A 3/8-16 male | >B M10x1.5 male", "<A 3/8-24 male | >B 3/8-24 male").says).toBe("B: M10x1.5 on ONE, 3/8-24 on TWO");
    expect(between("<A 3/8-16 | >B M10x1.5", "<A 3/8-24 | >B 3/8-24").says).toBe("A: 3/8-16 on ONE, 3/8-24 on TWO");
  });

  test("the same thread, outside on one and inside on the other or for a switch on one, is seen before any is measured", () => {
    expect(between("<A 7/16-24 | >B 3/8-24 male", "<A 3/8-24 | >B 3/8-24").says).toBe("B: male 3/8-24 on ONE, female 3/8-24 on TWO");
    expect(between("<A 3/8-24 switch", "<A 3/8-24").says).toBe("A: 3/8-24 for a switch on ONE, 3/8-24 for a line on TWO");
  });

  test("a port that only one of them has is looked for, whichever of the two it is", () => {
    expect(between("<A 3/8-24 | >B 3/8-24", "<A 3/8-24")).toEqual({ decides: true, says: "B: 3/8-24 on ONE, not on TWO" });
    expect(between("<A 3/8-24", "<A 3/8-24 | >B 3/8-24")).toEqual({ decides: true, says: "B: 3/8-24 on TWO, not on ONE" });
  });
});

const bodies = [...demo.components.values()].filter(({ kind, ports }) => ["master", "distribution-block", "hold-off-valve", "proportioning-valve", "adjustable-proportioning-valve", "combination-valve", "residual-valve", "anti-lock-unit", "tee", "union"].includes(kind) && ports.length > 0);
const shown = (component: Component): Port[] => component.ports.filter(({ use, thread }) => use !== "bleed" && thread !== undefined);
const windowOf = ({ thread, gender }: Port): Window => (gender === "male" ? externalMajorWindow : internalMinorWindow)(thread as Thread);

/** All or some of a part's ports, each read somewhere in its window and up to 0.05 mm off. */
const reading = fc.constantFrom(...bodies).chain((component) => fc.record({
  component: fc.constant(component),
  ports: fc.subarray(shown(component), { minLength: 1 }),
  where: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 8, maxLength: 8 }),
  off: fc.array(fc.double({ min: -0.05, max: 0.05, noNaN: true }), { minLength: 8, maxLength: 8 }),
  order: fc.array(fc.nat(), { minLength: 8, maxLength: 8 }),
}));

const readAs = (ports: readonly Port[], where: readonly number[], off: readonly number[]): SeenPort[] => ports.map((one, index) => {
  const { least, most } = windowOf(one);
  return { label: `${index}`, gender: one.gender, diameter: metres(least + (where[index] ?? 0) * (most - least) + (off[index] ?? 0) / 1000) };
});

property("noise of 0.05 mm never drops the true body from the list, nor leaves one of its ports unexplained by it", 1000, reading, ({ component, ports, where, off }) => {
  const found = identify(demo, threads, seen(...readAs(ports, where, off))).ranked.find((one) => one.component === component);
  expect(found?.matched).toHaveLength(ports.length);
  expect(found?.unexplained).toEqual([]);
});

property("nor does it give false certainty: a body that is another one is never named with 99 %", 500, reading, ({ component, ports, where, off }) => {
  const [top] = identify(demo, threads, seen(...readAs(ports, where, off))).ranked;
  if (top && top.component !== component) expect(top.probability).toBeLessThan(0.99);
});

property("the order in which ports are told changes nothing", 300, reading, ({ ports, where, off, order }) => {
  const told = readAs(ports, where, off);
  const shuffled = told.map((one, index) => ({ one, key: order[index] ?? 0 })).sort((a, b) => a.key - b.key).map(({ one }) => one);
  const odds = (list: readonly SeenPort[]) => new Map(identify(demo, threads, seen(...list)).ranked.map((one) => [one.component.name, one.probability]));
  const [first, second] = [odds(told), odds(shuffled)];
  expect([...second.keys()].sort()).toEqual([...first.keys()].sort());
  for (const [name, value] of first) expect(second.get(name)).toBeCloseTo(value, 9);
});

property("the odds of all listed bodies and of one not listed come to one", 200, reading, ({ ports, where, off }) => {
  const { ranked, notListed } = identify({ ...demo, components: new Map([...demo.components].filter(([, one]) => bodies.includes(one))) }, threads, seen(...readAs(ports, where, off)));
  const sum = ranked.reduce((total, one) => total + one.probability, notListed);
  expect(sum).toBeLessThanOrEqual(1 + 1e-9);
  expect(sum).toBeGreaterThan(0.95);
});

test("one port told of a body with two alike is twice as likely as of one of them, and half as likely as of a body with one port", () => {
  // A port is overlooked with 25 %: one of one is told with 0.75, one of two alike with 2 × 0.75 × 0.25 = 0.375.
  const catalogue = catalogueOf({ parts: ["ONE union @valve | <A 3/8-24", "TWO union @valve | <A 3/8-24 | >B 3/8-24"], workshopParts: [] });
  const odds = new Map(identify(catalogue, threads, seen(port("A", 8.5))).ranked.map((one) => [one.component.name, one.probability]));
  expect((odds.get("TWO") ?? NaN) / (odds.get("ONE") ?? NaN)).toBeCloseTo(0.5, 2);
});

test("a port told that is none of the body's makes the body unlikely and does not rule it out", () => {
  const { ranked } = identify(demo, threads, seen(port("A", 8.5), port("B", 8.5), port("C", 8.5)));
  const union = ranked.find(({ component }) => component.name === "UN-38");
  expect(union?.probability).toBeGreaterThan(0);
  expect(union?.probability).toBeLessThan(0.01);
  expect(union?.unexplained).toHaveLength(1);
});
