/**
 * Figures printed by others, each with its source beside it. The ids are those of the project's list of check values.
 * A source marked (memory) was not read: its figure is quoted from memory and agrees with the formula read.
 */
import { criticalDeceleration, frontLoad, frontLockDeceleration, idealRear, rearLoad, rearLockDeceleration } from "../../../src/core/balance/axles";
import { discTorque } from "../../../src/core/balance/disc";
import { longShoeFactor, longShoePressure, usualFactors } from "../../../src/core/balance/drum";
import { flowInertance, flowResistance, lineFrequency, reynoldsNumber, viscosityAt, waveSpeed } from "../../../src/core/balance/line-flow";
import { proportioning } from "../../../src/core/balance/passage";
import { boosted, boreArea, linePressure, mostAssist, vacuumLeft } from "../../../src/core/balance/pedal";
import { outletAt } from "../../../src/core/balance/pressure-curve";
import { ruleFigures } from "../../../src/core/balance/rule-figures";
import { decelerationFor, efficiencyLine, meanFullyDevelopedDeceleration, stoppingDistance, stoppingEnergy, stoppingTime } from "../../../src/core/balance/stopping";
import { airCompression, bulkModulus, hoseGrowth, travelShare } from "../../../src/core/balance/volume";
import {
  bar, cubicCentimetresPerFoot, cubicMetres, degrees, feet, inBar, inches, inCubicCentimetres, inPsi, kilograms, kilometresPerHour, kilopascals, metres, metresPerSecond, millimetres, newtons, pascals,
  perMegapascal, poundsForce, seconds, squareMetres, STANDARD_GRAVITY, type Metres,
} from "../../../src/core/quantity";
import { defaultSettings } from "../../../src/core/settings";

type Check = readonly [id: string, source: string, got: number, expected: number, tolerance: number];
const check = (about: string, checks: readonly Check[]): void =>
  describe(about, () => {
    test.each(checks)("%s (%s)", (_id, _source, got, expected, tolerance) => expect(Math.abs(got - expected)).toBeLessThanOrEqual(tolerance));
  });

const OPENSTAX = "OpenStax, College Physics";
const NOTES = "course notes on braking systems";
const RESEARCH = "brake-hydraulics research notes";
const REPORT = "student brake report, lb and in";
const area = (millimetre: number) => boreArea(millimetres(millimetre));
const squareInches = (value: number) => squareMetres(value * 0.0254 ** 2);

check("pedal, master and pistons", [
  ["A01", `${OPENSTAX} ch. 11.5, example 11.6`, linePressure(newtons(500), area(5)) * area(25), 12500, 50],
  ["A02", `${OPENSTAX} ch. 11.5, exercise 1`, linePressure(newtons(500), area(5)), 25.5e6, 5e4],
  ["A03", `${OPENSTAX} ch. 11.5, exercise 1`, linePressure(newtons(500), area(5)) / 101_325, 251, 0.6],
  ["A04", `${OPENSTAX} ch. 11.5, figure 11.12: 100 N at the pedal, 500 N at the rod`, boosted(undefined, newtons(100 * 5)), 500, 1e-9],
  ["A20", `${NOTES}, slide 12`, area(50) / area(25), 4, 0.01],
  ["A21", `${NOTES}, slide 12`, linePressure(boosted(undefined, newtons(100 * 5)), area(25)) * area(50), 2000, 1],
  ["A22", `${NOTES}, slide 15`, bar(80) * squareMetres(20e-4), 16000, 1],
  ["A45", `${REPORT}: 5/8 in bore`, inPsi(linePressure(poundsForce(1110.06), squareInches(0.3068))), 3618.19, 0.05],
  ["A46", REPORT, 3618.19 * 1.353, 4895, 1],
  ["A47", REPORT, 3618.19 * 1.131, 4092, 1],
  ["A87", RESEARCH, bar(60) * area(22.22), 2330, 5],
]);

check("booster", [
  ["A24", `${NOTES}, slide 14`, mostAssist(squareMetres(200e-4), bar(1), newtons(0)), 2000, 1],
  ["A89", "booster notes, section 4", mostAssist(squareMetres(0.0533), kilopascals(101.3 - 33), newtons(0)), 3640, 10],
  ["A90", "booster notes: equivalent diameter", Math.sqrt((0.0533 * 4) / Math.PI) * 1000, 260, 1],
  // Stop k of the printed table has had k - 1 stops before it; the air there is 101.3 kPa.
  ...([[2, 2.4], [3, 1.58], [4, 1.04], [5, 0.69]] as const).map(([stop, kilonewtons]): Check => {
    const chambers = { vacuumSide: cubicMetres(2.4e-3), airSide: cubicMetres(0.43e-3), area: squareMetres(0.0533), travel: millimetres(10) };
    return [`A${89 + stop}`, "booster notes, section 4, 10 mm column", (vacuumLeft(chambers, kilopascals(101.3 - 33), stop - 1) * 0.0533) / 1000, kilonewtons, 0.012];
  }),
]);

check("valves", [["A23", `${NOTES}, slide 19`, inBar(outletAt(proportioning(bar(40), 0.5), bar(80))), 60, 1e-9]]);

check("disc brakes", [
  // 3003 N m on the axle: two wheels of 2 mu N r. The sum over all four pad faces is T / (mu r).
  ["A26", `${NOTES}, slide 26`, 3003 / (discTorque(pascals(1), squareMetres(1), 0.4, metres(0.13)) / 2), 57750, 10],
  ["A27", `${NOTES}, slide 26`, inBar(pascals(57750 / 63.6e-4)), 90.8, 0.05],
  ["A83", RESEARCH, discTorque(bar(1), squareMetres(25.5e-4), 0.4, metres(0.12)), 24.5, 0.05],
  ["A84", RESEARCH, discTorque(bar(1), squareMetres(11.3e-4), 0.4, metres(0.11)), 9.9, 0.05],
  ["A85", RESEARCH, (100 * 24.5) / (24.5 + 9.9), 71, 0.5],
  ["A86", `${RESEARCH}: 1400 kg, 0.3 m tyre, g 9.81`, (1400 * 9.81 * 0.3) / 68.848, 60, 0.5],
]);

// Shigley, Mechanical Engineering Design, problem 16-1: drum of 300 mm, pivots 125 mm out, shoes 40 mm wide, 2.2 kN, friction 0.28.
const shoe = { drumRadius: metres(0.15), pivot: metres(0.125), arm: metres(0.2165), from: degrees(0), to: degrees(120) };
const shoeTorque = (sense: "leading" | "trailing"): number => longShoeFactor(shoe, 0.28, sense) * 2200 * 0.15;
const BREUER = "Breuer and Bill, by way of an encyclopedia";

check("drum brakes", [
  ["A99", "Shigley problem 16-1 (memory): 734 kPa", longShoePressure(shoe, 0.28, "leading", { force: newtons(2200), width: metres(0.04) }) / 1000, 734, 1],
  ["A100", "Shigley problem 16-1 (memory)", shoeTorque("leading"), 277.6, 0.5],
  ["A101", "Shigley problem 16-1 (memory)", shoeTorque("trailing"), 144.4, 0.5],
  ["A102", "Shigley problem 16-1 (memory)", shoeTorque("leading") + shoeTorque("trailing"), 422, 0.6],
  ["A95", `${BREUER}: a disc is 2 mu`, discTorque(pascals(1), squareMetres(1), 0.4, metres(1)), 0.8, 1e-9],
  ["A96 least", BREUER, usualFactors("leading-trailing", 0.4)[0], 1.6, 0.001],
  ["A96 most", BREUER, usualFactors("leading-trailing", 0.4)[1], 2, 0.001],
  ["A97 least", BREUER, usualFactors("two-leading", 0.4)[0], 3.2, 0.001],
  ["A97 most", BREUER, usualFactors("two-leading", 0.4)[1], 4, 0.001],
  ["A98 least", BREUER, usualFactors("duo-servo", 0.4)[0], 4.4, 0.001],
  ["A98 most", BREUER, usualFactors("duo-servo", 0.4)[1], 5, 0.001],
]);

const G = 9.81;
const W = 1500 * G;
const buggy = { front: 0.577 / 1.53, height: 0.592 / 1.53 };
const HALLIDAY = "Halliday, Resnick and Walker, 8th ed., ch. 12 (printed answers from memory)";
// 11 kN, 4.2 m wheelbase, 1.8 m from the front axle to the centre of gravity at 0.75 m, all wheels sliding at 0.4.
const van = { front: (4.2 - 1.8) / 4.2, height: 0.75 / 4.2 };

check("axle loads", [
  ["A13", `${NOTES}, slide 10`, W * frontLoad({ front: 0.57, height: 0 }, 0), 8388, 1],
  ["A14", `${NOTES}, slide 10`, W * rearLoad({ front: 0.57, height: 0 }, 0), 6328, 1],
  // Printed 2586 N; recomputed 2591.4, an arithmetic slip of the source.
  ["A15", `${NOTES}, slide 10`, W * (frontLoad({ front: 0, height: 0.58 / 2.8 }, 8.34 / G) - 0), 2586, 6],
  ["A16", `${NOTES}, slide 10`, (100 * (8388 + 2586)) / 14715, 74.7, 0.15],
  ["A17", `${NOTES}, slide 10`, 0.85 * 10974, 9328, 1],
  ["A18", `${NOTES}, slide 10`, 0.85 * 3742, 3181, 1],
  ["A19", `${NOTES}, slide 10`, 9328 * 0.32, 2985, 1],
  ["A39", "student buggy report", 2452.5 * frontLoad(buggy, 0.68), 1570.177, 0.02],
  ["A40", "student buggy report", 2452.5 * rearLoad(buggy, 0.68), 882, 0.5],
  ["A41", "student buggy report", 100 * frontLoad(buggy, 0.68), 64.03, 0.02],
  ["A42", "student buggy report", 0.68 * 1570.177, 1067.71, 0.02],
  ["A43", "student buggy report", 0.68 * G, 6.66, 0.015],
  ["A75", HALLIDAY, 0.4 * 9.8, 3.9, 0.05],
  ["A76", HALLIDAY, (11 * rearLoad(van, 0.4)) / 2, 2, 0.05],
  ["A77", HALLIDAY, (11 * frontLoad(van, 0.4)) / 2, 3.5, 0.05],
  ["A78", HALLIDAY, (11 * idealRear(van, 0.4)) / 2, 0.79, 0.005],
  ["A79", HALLIDAY, (11 * (0.4 - idealRear(van, 0.4))) / 2, 1.4, 0.05],
  ["A88", RESEARCH, frontLoad({ front: (2.6 - 1.04) / 2.6, height: 0.55 / 2.6 }, 1), 0.81, 0.005],
]);

// Automobile theory textbook, exercise 4.3: a truck with 0.38 of its braking at the front, on 0.8. L 3.95 m; unladen a 2.1, b 1.85, h 0.845 m; laden a 2.95, b 1, h 1.17 m.
const TEXTBOOK = "automobile theory textbook, exercise 4.3 (formula read, printed answer from memory)";
const unladen = { front: 1.85 / 3.95, height: 0.845 / 3.95 };
const laden = { front: 1 / 3.95, height: 1.17 / 3.95 };

check("order of locking", [
  ["A67 front circuit failed, unladen", TEXTBOOK, 9.8 * rearLockDeceleration(unladen, 0, 0.8), 3.56, 0.005],
  ["A68 front circuit failed, laden", TEXTBOOK, 9.8 * rearLockDeceleration(laden, 0, 0.8), 4.73, 0.005],
  ["A71 rear circuit failed, laden", TEXTBOOK, 9.8 * frontLockDeceleration(laden, 1, 0.8), 2.6, 0.005],
  ["A73 rear efficiency, unladen", TEXTBOOK, rearLockDeceleration(unladen, 0.38, 0.8) / 0.8, 0.672, 0.001],
  ["A74 rear efficiency, laden", TEXTBOOK, rearLockDeceleration(laden, 0.38, 0.8) / 0.8, 0.8715, 0.001],
  // Where its two locks coincide the rear formula gives the adhesion back: z = mu.
  ["critical deceleration", "definition: at it both axles use the deceleration itself", rearLockDeceleration(laden, 0.38, criticalDeceleration(laden, 0.38)), criticalDeceleration(laden, 0.38), 1e-12],
]);

const still = { response: seconds(0), buildUp: seconds(0) };
const half = { response: seconds(0.5), buildUp: seconds(0) };
const rule = (name: "49 CFR 571.135" | "UN R13-H") => ruleFigures({ ...defaultSettings, stoppingRule: name });
/** v in km/h, over a quadratic coefficient of a rule's distance. */
const ruleEquivalent = (coefficient: number): number => 1 / (2 * 3.6 ** 2 * coefficient);

check("stops", [
  ["A05", `${OPENSTAX} ch. 2.5`, stoppingDistance(metresPerSecond(30), 7 / STANDARD_GRAVITY, still), 64.3, 0.05],
  ["A06", `${OPENSTAX} ch. 2.5`, stoppingDistance(metresPerSecond(30), 5 / STANDARD_GRAVITY, still), 90, 0.05],
  ["A07", `${OPENSTAX} ch. 2.5`, stoppingDistance(metresPerSecond(30), 7 / STANDARD_GRAVITY, half), 79.3, 0.05],
  ["A08", `${OPENSTAX} ch. 2.5`, stoppingDistance(metresPerSecond(30), 5 / STANDARD_GRAVITY, half), 105, 0.5],
  ["A09", `${OPENSTAX} ch. 2.5 problems`, stoppingTime(kilometresPerHour(80), 1.65 / STANDARD_GRAVITY), 13.5, 0.05],
  ["A10", `${OPENSTAX} ch. 2.5 problems`, kilometresPerHour(80) / 8.3, 2.68, 0.005],
  ["A11", `${NOTES}, slide 8`, stoppingEnergy(kilograms(1500), metresPerSecond(27.8)), 579_000, 700],
  ["A12", `${NOTES}, slide 8: m a v`, 1500 * 8 * 27.8, 334_000, 500],
  ["A25", `${NOTES}, slide 26`, stoppingDistance(metresPerSecond(27.8), 8.34 / STANDARD_GRAVITY, still), 46.3, 0.05],
  ["A44", `${REPORT}: 21.12 slug at 66 ft/s, in ft lbf`, (21.12 * 66 ** 2) / 2, 46_000, 60],
  ["A117", "The Contact Patch, C.0816", stoppingEnergy(kilograms(1500), kilometresPerHour(120)) / 1000, 833, 1],
  ["A118", "The Contact Patch, C.0816", stoppingTime(kilometresPerHour(120), 0.5), 6.8, 0.05],
  ["A119", "The Contact Patch, C.0816", stoppingEnergy(kilograms(1500), kilometresPerHour(120)) / stoppingTime(kilometresPerHour(120), 0.5) / 1000, 120, 4],
  ["A58", "UN R13 annex 4, 1.1.2, on a constant 6.43 m/s²", STANDARD_GRAVITY * meanFullyDevelopedDeceleration({ begins: kilometresPerHour(80), ends: kilometresPerHour(10), way: metres((80 ** 2 - 10 ** 2) / 25.92 / 6.43) }), 6.43, 1e-9],
]);

check("rules", [
  ["A51", "EEC 71/320, handbook p. 362", efficiencyLine(0.8, 0.85), 0.61, 1e-9],
  ["A52", "EEC 71/320, handbook p. 362", efficiencyLine(0.2, 0.85), 0.1, 1e-9],
  ["A53", "handbook, figure 12.1-2: k = (z + 0.07) / 0.85", efficiencyLine((0.61 + 0.07) / 0.85, 0.85), 0.61, 1e-9],
  ["A54", "UN R13 annex 4, 2.2.1", 0.1 * 80 + (2 * 80 ** 2) / 150, 93.33, 0.01],
  ["A55", "UN R13 annex 4, 2.2.1", ruleEquivalent(2 / 150), 2.9, 0.05],
  ["A56", "UN R13 annex 4, 2.2.1", ruleEquivalent(2 / 130), 2.5, 0.05],
  ["A57", "UN R13 annex 4, 2.2.1", ruleEquivalent(2 / 115), 2.2, 0.05],
  ["A59", "49 CFR 571.135 S7.11, quoted in booster notes", rule("49 CFR 571.135").unpowered, 168, 1e-9],
  ["A60", "49 CFR 571.135 S7.5 (memory)", rule("49 CFR 571.135").stop, 70, 1e-9],
  ["A61", "UN R13-H annex 3 (memory)", ruleEquivalent(0.006), 6.43, 0.005],
  ["A61 by the distance: 0.1 v is 0.36 s", "UN R13-H annex 3 (memory)", STANDARD_GRAVITY * decelerationFor(kilometresPerHour(100), rule("UN R13-H").stop, { response: seconds(0.36), buildUp: seconds(0) }), 6.43, 0.005],
  ["A62", "UN R13-H annex 3 (memory)", ruleEquivalent(0.0158), 2.44, 0.005],
  ["A63", "49 CFR 571.135 S7.10 (memory)", rule("49 CFR 571.135").failed, 168, 1e-9],
  ["A64", "49 CFR 571.135 S7.8 (memory): 0.0075", 0.1 * 100 + 0.0075 * 100 ** 2, 85, 1e-9],
  ["A65", "49 CFR 571.135 S7.9 (memory): 0.0100", 0.1 * 100 + 0.01 * 100 ** 2, 110, 1e-9],
  ["A66", "49 CFR 570.55 (c)", 100 * travelShare(inches(7), inches(2)), 71.43, 0.01],
  ["60 mph", "49 CFR 571.105 (memory): 216 ft", ruleFigures(defaultSettings).stop / feet(1), 216, 1e-9],
]);

const LINE: Metres = millimetres(3);
check("fluid, hose and line", [
  ["C04", "documentation of a fluids library", reynoldsNumber(2.5, metres(0.25), 1.9e-5 / 1.1613), 38200.65789473684, 1e-6],
  ["C05", "documentation of a fluids library", reynoldsNumber(2.5, metres(0.25), 1.636e-5), 38202.93398533008, 1e-6],
  ["C10", RESEARCH, flowResistance(metres(3), LINE, 1.88), 2.8e12, 5e10],
  ["C11", `${RESEARCH}: 10 cm³/s`, inBar(pascals(flowResistance(metres(3), LINE, 1.88) * 1e-5)), 280, 5],
  ["C12", "the same by a fluids library, run", flowResistance(metres(3), LINE, 1.88) * 1e-5, 28369663.33750644, 29],
  ["C13", RESEARCH, flowInertance(metres(3), LINE, 1045), 4.4e8, 5e6],
  ["C14", RESEARCH, lineFrequency(4.4e8, 2e-13), 17, 0.5],
  ["C15", RESEARCH, waveSpeed(pascals(1.5e9), 1045), 1200, 10],
  ["C16", "braking textbook, quoted in research notes", bulkModulus(perMegapascal(0.0007), 0, bar(50)) / 1e9, 1.43, 0.05],
  ["C17", "braking textbook, quoted in research notes", bulkModulus(perMegapascal(0.003), 0, bar(50)) / 1e9, 0.333, 0.01],
  ["C18", "SAE J1401, quoted in a patent", cubicCentimetresPerFoot(0.33) * 1e6, 1.08, 0.005],
  ["C19", RESEARCH, inCubicCentimetres(hoseGrowth(metres(0.4), cubicCentimetresPerFoot(0.33), 1)), 0.43, 0.005],
  ["C30", "ASTM D341 (memory) through the limits of DOT 4", viscosityAt({ viscosity: 1800, temperature: -40 }, { viscosity: 1.5, temperature: 100 }, 20), 11.53, 0.02],
  ["C32", "49 CFR 571.106 table I (memory): 0.66 cc/ft", defaultSettings.hoseExpansion / cubicCentimetresPerFoot(1), 0.66, 1e-9],
]);

// By hand from p V^1.4 = const: at twice and ten times the pressure of the air, 1 - 2^(-1/1.4) = 0.39049 and 1 - 10^(-1/1.4) = 0.80693 of it are gone.
test.each([[0, 0], [101_325, 0.39049], [9 * 101_325, 0.80693]])("air under %d Pa gives way by %d of its volume", (pressure, share) => expect(airCompression(cubicMetres(2e-6), pascals(pressure)) / 2e-6).toBeCloseTo(share, 5));
