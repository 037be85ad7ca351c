/** One cause, one code: the finding that explains another hides it. Each pair is shown once together with its near miss in chain.test.ts. */
import { aboveNote, findingOf, type CarCells, type Shop } from "../workshop";

const single: CarCells = { Year: "1962", Master: "MC-ONE" };
const blockWith = (outlet: string): Shop => ({ parts: [`BLK distribution-block @valve | <FI front 1/2-20 | <RI rear 1/2-20 | >L front LF ${outlet} | >R front RF 3/8-24 | >RO rear 7/16-24`] });

const cases: readonly (readonly [string, CarCells, string, Shop?])[] = [
  ["proportioning upstream of both axles is not also proportioning on the front", { ...single, Valves: "PV-ANY; BLK-4; TEE" }, "proportioning-upstream-of-both"],
  ["a shared residual is not also a residual on the discs", { ...single, Valves: "RV10; BLK-4; TEE" }, "residual-shared"],
  ["a drum master's check valve is not also a residual on the discs", { Valves: "HO; BLK; TEE", Master: "MC-DRUM" }, "drum-master-on-disc"],
  ["a wrong seat is not also a wrong thread", { Valves: "HO; BLK; TEE" }, "seat-mismatch", blockWith("3/8-24 bubble-iso")],
  ["a shortage of outlets is not also an unfed wheel of its circuit", { Valves: "HO; BLK" }, "outlet-shortage", { joins: ["TEE@added-1 | O2 | | | | | yes"] }],
  ["a shortage in the rear line does not hide a front wheel that nothing feeds", { Valves: "HO; BLK" }, "circuit-unfed outlet-shortage", { joins: ["BLK | L | | | | | yes"] }],
  ["crossed lines are not also hold-off on the rears and proportioning on the fronts", { Valves: "CV; TEE" }, "outlets-crossed", { joins: ["MC | F | CV | RI"] }],
  ["crossed lines are not also a drum residual on the discs", { Valves: "HO; BLK; TEE", Master: "MC-REAR10" }, "outlets-crossed", { joins: ["MC-REAR10 | R | BLK | FI"] }],
  ["crossed lines do not hide a fault of their own", { Valves: "HO; CV; TEE" }, "outlets-crossed metering-doubled", { joins: ["MC | R | CV | FI"] }],
];
test.each(cases.map(([says, ...rest]) => [says, rest] as const))("%s", (_, [cells, codes, shop]) => expect(aboveNote(cells, shop)).toBe(codes));

test("two causes are two findings: a drum residual in the front line behind a drum master", () => {
  expect(aboveNote({ Valves: "RV10@front; HO; BLK; TEE", Master: "MC-DRUM" })).toBe("residual-on-disc drum-master-on-disc residual-doubled");
  expect(findingOf("drum-master-on-disc", { Master: "MC-DRUM" }).place).toBe("MC-DRUM F, to LF, RF");
});
