/** The figures of the physics that a shop or a rule may change, each with where its default comes from. */
import {
  cubicCentimetresPerFoot, feet, inches, kilometresPerHour, metres, milesPerHour, newtons, perMegapascal, poundsForce, psi, seconds,
  type Metres, type MetresPerSecond, type Newtons, type Pascals, type PerPascal, type Seconds, type SquareMetres,
} from "./quantity";
import type { SettingEntryOf, SettingUnit } from "./setting-unit";

export const STOPPING_RULES = ["49 CFR 571.105", "49 CFR 571.135", "UN R13-H"] as const;
export type StoppingRule = (typeof STOPPING_RULES)[number];
export const DISC_RADII = ["uniform wear", "uniform pressure"] as const;

/** What a stopping rule states, each as a setting of its own. */
type RuleFigures<P extends string> = Readonly<Record<`${P}Speed`, MetresPerSecond> & Record<`${P}Stop` | `${P}Failed` | `${P}Unpowered`, Metres> & Record<`${P}Pedal`, Newtons>>;

export interface PhysicsSettings extends RuleFigures<"fmvss105">, RuleFigures<"fmvss135">, RuleFigures<"r13h"> {
  readonly discRadius: (typeof DISC_RADII)[number];
  readonly discThreshold: Pascals;
  readonly drumThreshold: Pascals;
  readonly holdOffRest: Pascals;
  readonly balanceFrom: number;
  readonly balanceTo: number;
  readonly lowDeceleration: number;
  readonly middleDeceleration: number;
  readonly highDeceleration: number;
  readonly efficiencyAdhesion: number;
  readonly leastEfficiency: number;
  readonly efficiencyLine: number;
  readonly highestAdhesion: number;
  readonly roadAdhesion: number;
  readonly stoppingRule: StoppingRule;
  readonly response: Seconds;
  readonly buildUp: Seconds;
  readonly manualPedalRatio: number;
  readonly stopsWithoutVacuum: number;
  readonly travelForce: Newtons;
  readonly travelLimit: number;
  readonly freeTravel: Metres;
  readonly portTravel: Metres;
  readonly shoeLever: number;
  readonly hoseExpansion: SquareMetres;
  readonly hosePressure: Pascals;
  readonly fluidCompressibility: PerPascal;
  readonly airShare: number;
}

type Row = SettingEntryOf<PhysicsSettings>;

const PRACTICE = "common practice, no source";
const MEMORY = " (from memory)";
const LINE_RULES = `UN R13-H annex 5, 49 CFR 571.135 S7.4${MEMORY}`;
const SHOP = "choice of the shop";

const plain = (key: keyof PhysicsSettings, name: string, value: number, rest: Pick<Row, "unit" | "meaning" | "source">): Row => ({ key, name, value, written: value, ...rest });

type Prefix = "fmvss105" | "fmvss135" | "r13h";
interface Stated {
  readonly name: StoppingRule;
  readonly speed: readonly [number, MetresPerSecond, SettingUnit];
  readonly stop: readonly [number, Metres, string];
  readonly failed: readonly [number, Metres, string];
  readonly unpowered: readonly [number, Metres, string];
  readonly unit: SettingUnit;
  readonly pedal: readonly [number, Newtons, SettingUnit];
}

const ruleRows = (prefix: Prefix, { name, speed, stop, failed, unpowered, unit, pedal }: Stated): Row[] => [
  { key: `${prefix}Speed`, name: `${name} speed`, value: speed[1], written: speed[0], unit: speed[2], meaning: "speed before each of its stops", source: `${name}${MEMORY}` },
  { key: `${prefix}Stop`, name: `${name} stop`, value: stop[1], written: stop[0], unit, meaning: "longest stop with everything working", source: stop[2] },
  { key: `${prefix}Failed`, name: `${name} stop with a circuit failed`, value: failed[1], written: failed[0], unit, meaning: "longest stop with one circuit failed", source: failed[2] },
  { key: `${prefix}Unpowered`, name: `${name} stop without assist`, value: unpowered[1], written: unpowered[0], unit, meaning: "longest stop with the booster failed", source: unpowered[2] },
  { key: `${prefix}Pedal`, name: `${name} pedal force`, value: pedal[1], written: pedal[0], unit: pedal[2], meaning: "most force on the pedal in its stops", source: `${name}${MEMORY}` },
];

export const physicsSettingEntries: readonly Row[] = [
  { key: "discRadius", name: "disc effective radius", value: "uniform wear", written: "uniform wear", unit: "text", choices: DISC_RADII, meaning: "how the pads are taken to press", source: "uniform wear is worn-in pads, uniform pressure new ones" },
  { key: "discThreshold", name: "disc threshold", value: psi(8), written: 8, unit: "psi", meaning: "where WheelBrakes has none: pressure that brings pads on", source: "0.3 to 1 bar in research notes" },
  { key: "drumThreshold", name: "drum threshold", value: psi(75), written: 75, unit: "psi", meaning: "where WheelBrakes has none: pressure that brings shoes on", source: "50 to 125 psi, common practice, no source" },
  { key: "holdOffRest", name: "hold-off rest pressure", value: psi(0), written: "0", unit: "psi", meaning: "let past by a hold-off while it is shut", source: PRACTICE },
  plain("balanceFrom", "balance from", 0.15, { unit: "g", meaning: "the order of locking is judged from here", source: LINE_RULES }),
  plain("balanceTo", "balance to", 0.8, { unit: "g", meaning: "and up to here", source: LINE_RULES }),
  plain("lowDeceleration", "low deceleration", 0.3, { unit: "g", meaning: "first deceleration of BALANCE", source: SHOP }),
  plain("middleDeceleration", "middle deceleration", 0.6, { unit: "g", meaning: "second deceleration of BALANCE", source: SHOP }),
  plain("highDeceleration", "high deceleration", 0.8, { unit: "g", meaning: "third deceleration of BALANCE, and the stop that volumes are judged at", source: SHOP }),
  plain("efficiencyAdhesion", "efficiency adhesion", 0.8, { unit: "ratio", meaning: "adhesion of the road on which rear-too-weak is judged", source: PRACTICE }),
  { key: "leastEfficiency", name: "least efficiency", value: 0.75, written: 75, unit: "%", meaning: "below it the rears are flagged rear-too-weak", source: PRACTICE },
  plain("efficiencyLine", "efficiency line", 0.7, { unit: "ratio", meaning: "slope of the limit of grip used: c in z ≥ 0.1 + c (k − 0.2)", source: `${LINE_RULES}; 0.85 in EEC 71/320 (read)` }),
  plain("highestAdhesion", "highest adhesion", 1, { unit: "ratio", meaning: "up to here locking is looked at", source: "good dry road, handbook table" }),
  plain("roadAdhesion", "road adhesion", 0.9, { unit: "ratio", meaning: "of the road of the stops below", source: `49 CFR 571.135 S6.2${MEMORY}` }),
  { key: "stoppingRule", name: "stopping rule", value: "49 CFR 571.105", written: "49 CFR 571.105", unit: "text", choices: STOPPING_RULES, meaning: "the rule that stops are held against", source: SHOP },
  ...ruleRows("fmvss105", {
    name: "49 CFR 571.105", speed: [60, milesPerHour(60), "mph"], unit: "ft", pedal: [150, poundsForce(150), "lbf"],
    stop: [216, feet(216), `49 CFR 571.105, second effectiveness${MEMORY}`], failed: [456, feet(456), `49 CFR 571.105, partial failure${MEMORY}`], unpowered: [456, feet(456), `49 CFR 571.105, inoperative power${MEMORY}`],
  }),
  ...ruleRows("fmvss135", {
    name: "49 CFR 571.135", speed: [100, kilometresPerHour(100), "km/h"], unit: "m", pedal: [500, newtons(500), "N"],
    stop: [70, metres(70), `49 CFR 571.135 S7.5: 0.10 V + 0.0060 V²${MEMORY}`], failed: [168, metres(168), `49 CFR 571.135 S7.10${MEMORY}`], unpowered: [168, metres(168), "49 CFR 571.135 S7.11: 0.10 V + 0.0158 V², quoted in booster notes"],
  }),
  ...ruleRows("r13h", {
    name: "UN R13-H", speed: [100, kilometresPerHour(100), "km/h"], unit: "m", pedal: [500, newtons(500), "N"],
    stop: [70, metres(70), `UN R13-H annex 3, 2.1.1: 0.1 v + 0.0060 v²${MEMORY}`], failed: [168, metres(168), `UN R13-H annex 3, 2.2.1: 0.1 v + 0.0158 v²${MEMORY}`], unpowered: [168, metres(168), `as with a circuit failed${MEMORY}`],
  }),
  { key: "response", name: "brake response", value: seconds(0.1), written: 0.1, unit: "s", meaning: "from the foot to the first braking", source: PRACTICE },
  { key: "buildUp", name: "brake build-up", value: seconds(0.3), written: 0.3, unit: "s", meaning: "from there to the full force", source: PRACTICE },
  plain("manualPedalRatio", "least manual pedal ratio", 5, { unit: "ratio", meaning: "below it a pedal without booster is low", source: "5 to 7, common practice; 6.2 in a training text" }),
  plain("stopsWithoutVacuum", "stops without vacuum", 2, { unit: "count", meaning: "stops after which the booster's reserve is stated", source: SHOP }),
  { key: "travelForce", name: "travel pedal force", value: poundsForce(50), written: 50, unit: "lbf", meaning: "pedal travel is judged at this force", source: "49 CFR 570.55 (read, heavier vehicles)" },
  { key: "travelLimit", name: "travel limit", value: 0.8, written: 80, unit: "%", meaning: "above it the pedal is flagged travel-long", source: `49 CFR 570.5${MEMORY}; a model rule, states decide` },
  { key: "freeTravel", name: "push-rod free travel", value: inches(0.04), written: 0.04, unit: "in", meaning: "before the master's piston moves", source: PRACTICE },
  { key: "portTravel", name: "port travel", value: inches(0.04), written: 0.04, unit: "in", meaning: "until a piston has closed its port", source: PRACTICE },
  plain("shoeLever", "shoe lever", 2, { unit: "ratio", meaning: "wheel-cylinder travel over the gap at the lining's middle", source: `anchor at one end, cylinder at the other${MEMORY}` }),
  { key: "hoseExpansion", name: "hose expansion", value: cubicCentimetresPerFoot(0.66), written: 0.66, unit: "cc/ft", meaning: "where Components has none", source: `most that 49 CFR 571.106 allows a 1/8 in hose at 1000 psi${MEMORY}` },
  { key: "hosePressure", name: "hose expansion pressure", value: psi(1000), written: 1000, unit: "psi", meaning: "pressure at which hose expansions are stated", source: "SAE J1401, quoted in a patent" },
  { key: "fluidCompressibility", name: "fluid compressibility", value: perMegapascal(0.0007), written: 0.0007, unit: "1/MPa", meaning: "of the fluid without air; 0.003 at 200 °C", source: "braking textbook, quoted in research notes" },
  { key: "airShare", name: "air in fluid", value: 0, written: "0", unit: "%", meaning: "share of the fluid's volume at rest that is air", source: "a well-bled system has none" },
];
