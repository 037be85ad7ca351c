/** Rules that need numbers of the car. Where one is missing the rule is silent, and one note names the columns. */
import { sayCircuit, theCircuit } from "../assembly";
import { efficiencyOn, firstLock, lockOf, pointAtDeceleration } from "../balance/braking";
import { stateOf } from "../balance/car-braking";
import type { Gap } from "../balance/figures";
import { judge, rearAheadWithin, withFactor, type Judgement, type UnderLoad } from "../balance/judgement";
import { actingSteps } from "../balance/lines";
import { pedalForPressure, vacuumFor } from "../balance/pedal-figures";
import { rearFirst, type Stretch } from "../balance/rear-ahead";
import { ruleDeceleration, ruleFigures } from "../balance/rule-figures";
import { sayAdvice, sayPassingSettings } from "../balance/say-advice";
import { travelOf } from "../balance/travel";
import type { Car, Platform } from "../car";
import { lookUp } from "../catalogue";
import { PROPORTIONING_NAMES } from "../component";
import { finding, type Finding, type Severity } from "../finding";
import { groupBy } from "../group-by";
import { metres, pascals, type Metres, type Pascals } from "../quantity";
import type { Question } from "../question";
import { sayFigure, sayForce, sayLength, sayPressure, sayShare, sayVacuum, sayVolume } from "../say-quantity";
import { axleKind, brakeKind, labels, pathsTo, proportioningOn, residualsOn, sayWheels, type CarFacts, type Rule } from "./rule";

interface Ahead {
  readonly under: UnderLoad;
  readonly stretches: readonly Stretch[];
}

/** The loads under which the rears pass the fronts, with the drums' factor at one place of its band. */
function aheadAt({ car, under }: Judgement, factor: "low" | "middle" | "high"): Ahead[] {
  const each = under.map((one) => ({ under: one, at: factor === "middle" ? one : withFactor(car, one, factor) }));
  return each.map(({ under: one, at }) => ({ under: one, stretches: at ? rearAheadWithin(at) : [] })).filter(({ stretches }) => stretches.length > 0);
}

const sayAhead = (ahead: readonly Ahead[]): string =>
  ahead.map(({ under, stretches }) => `${under.load.load} from ${stretches.map(({ from, to }) => `${sayFigure(from)} to ${sayFigure(to)} g`).join(" and from ")}`).join(", ");

const bandsOf = ({ car }: Judgement): string => [car.axles?.ends.front.band, car.axles?.ends.rear.band].flatMap((band) => band?.says ?? []).join("; ");
const hasBand = ({ car: { axles } }: Judgement): boolean => axles?.ends.front.band !== undefined || axles?.ends.rear.band !== undefined;

/** Judged at the drums' factors low, stated and high; an adjustable valve at its setting, or over its range while nobody has said it. */
export const rearLocksFirst: Rule = (facts) => {
  const judged = judge(facts);
  const { setting } = judged;
  const middle = aheadAt(judged, "middle");
  if (middle.length > 0) {
    const sure = !hasBand(judged) || aheadAt(judged, "low").length > 0;
    const seen = `the rears use more grip than the fronts ${sayAhead(middle)}${setting ? `, even with ${setting.name} at its lowest setting` : ""}${sure ? "" : `, though not at the least brake factor (${bandsOf(judged)})`}`;
    return [finding("rear-locks-first", { place: rearPlace(facts), seen, severity: severityAhead(facts, sure), cure: sayAdvice(judged) })];
  }
  return [...uncertainGain(judged, facts), ...whileHeldOff(judged, facts), ...settingsThatPass(judged)];
};

/** A car as built is what its maker meant; where nobody says whether it was converted, somebody has to look. */
function severityAhead({ assembly: { car } }: CarFacts, sure: boolean): Severity {
  if (car.conversion === false) return "watch";
  return car.conversion && sure ? "stop" : "decide";
}

const rearPlace = (facts: CarFacts): string => labels(pathsTo(facts, "rear").flatMap((path) => proportioningOn(facts, path))) || sayWheels(pathsTo(facts, "rear"));

function uncertainGain(judged: Judgement, facts: CarFacts): Finding[] {
  const high = hasBand(judged) ? aheadAt(judged, "high") : [];
  return high.length === 0 ? [] : [finding("drum-gain-uncertain", { place: rearPlace(facts), seen: `at the high end of the brake factor (${bandsOf(judged)}) the rears pass the fronts ${sayAhead(high)}` })];
}

/** While the hold-off is not fully open the fronts lag by design: a note. */
function whileHeldOff({ car, under }: Judgement, facts: CarFacts): Finding[] {
  const from = car.facts.catalogue.settings.balanceFrom;
  const early = under.filter((one) => one.range.from > from).map((one) => ({ under: one, stretches: rearAheadWithin({ braking: one.braking, range: { from, to: one.range.from } }) })).filter(({ stretches }) => stretches.length > 0);
  return early.length === 0 ? [] : [finding("rear-locks-first", { place: rearPlace(facts), severity: "note", seen: "", sentence: `The rears use more grip than the fronts ${sayAhead(early)}, before the hold-off is fully open.` })];
}

function settingsThatPass(judged: Judgement): Finding[] {
  const sentence = sayPassingSettings(judged);
  return sentence === undefined ? [] : [finding("rear-locks-first", { place: judged.setting?.name ?? "", severity: "note", seen: "", sentence, cure: `set it within that range, and state it in Cars, Valve split set` })];
}

const PROPORTIONING_ADHESIONS: Stretch = { from: 0.2, to: 0.8 };

/** Without figures the balance is not known, and the note on missing figures stands instead. */
export const proportioningMissing: Rule = (facts) => {
  const rears = pathsTo(facts, "rear");
  if (axleKind(facts, "front") !== "disc" || axleKind(facts, "rear") !== "drum" || rears.length === 0) return [];
  if (rears.some((path) => path.unknown.length > 0 || proportioningOn(facts, path).length > 0)) return [];
  const { under } = judge(facts);
  if (under.length === 0) return [];
  const { from, to } = PROPORTIONING_ADHESIONS;
  const first = under.flatMap(({ load, braking }) => rearFirst(braking, to).filter((one) => one.to > from + 1e-6).map((one) => `${load.load} on adhesion ${sayFigure(Math.max(from, one.from))} to ${sayFigure(one.to)}`));
  const place = sayWheels(rears);
  if (first.length > 0) return [finding("proportioning-missing", { place, seen: `no proportioning to the rear drums, and the rears lock first ${first.join(", ")}` })];
  return [finding("proportioning-missing", { place, severity: "note", seen: "", sentence: "No proportioning to the rear drums: by the figures entered the fronts lock first on every adhesion from 0.2 to 0.8." })];
};

export const rearTooWeak: Rule = (facts) => {
  const { efficiencyAdhesion, leastEfficiency } = facts.catalogue.settings;
  const weak = judge(facts).under.flatMap(({ load, braking }) => {
    const efficiency = efficiencyOn(braking, efficiencyAdhesion);
    return firstLock(braking, efficiencyAdhesion)?.axle === "front" && efficiency !== undefined && efficiency < leastEfficiency ? [`${load.load} ${sayShare(efficiency)}`] : [];
  });
  return weak.length === 0 ? [] : [finding("rear-too-weak", { place: rearPlace(facts), seen: `braking efficiency on adhesion ${sayFigure(efficiencyAdhesion)} is ${weak.join(", ")}, under ${sayShare(leastEfficiency)}` })];
};

export const valveNeverActs: Rule = (facts) => {
  const { car, under } = judge(facts);
  const { settings } = facts.catalogue;
  const locks = under.map(({ braking }) => lockOf(braking, "front", settings.highestAdhesion)?.pressure ?? Infinity);
  const [rear] = pathsTo(facts, "rear");
  if (!rear || under.length === 0 || car.adjustedTo === Infinity) return [];
  const rearsFirst = under.some(({ braking }) => firstLock(braking, settings.highestAdhesion)?.axle === "rear");
  const highest = Math.max(...locks) as Pascals;
  const points = under.map(({ load }) => actingSteps(rear, stateOf(car, load.load)).filter(({ step }) => PROPORTIONING_NAMES.has(step.duty.does)));
  return (points[0] ?? []).filter((_, index) => points.every((steps, at) => (steps[index]?.acts ?? 0) > (locks[at] as number))).map(({ step, acts }) =>
    finding("valve-never-acts", { place: step.instance.label, severity: rearsFirst ? "watch" : "note", seen: `${step.instance.label} acts from ${sayPressure(settings, acts)}, and the fronts lock at ${sayPressure(settings, highest)} on adhesion ${sayFigure(settings.highestAdhesion)}` }));
};

export const residualMissingLowMaster: Rule = (facts) => {
  const { assembly: { car }, catalogue } = facts;
  const height = reservoirHeight(car, lookUp(catalogue.platforms, car.platform));
  const bare = facts.paths.filter((path) => brakeKind(path.brake) === "disc" && path.unknown.length === 0 && residualsOn(facts, path).length === 0);
  if (height === undefined || height >= 0 || bare.length === 0) return [];
  return [finding("residual-missing-low-master", { place: sayWheels(bare), seen: `the reservoir stands ${sayLength(catalogue.settings, metres(-height))} below the calipers, and no residual holds the line to ${sayWheels(bare)}` })];
};

/** Line pressure of the rule's stop, under the load that takes most. */
function rulePressure({ under, car }: Judgement): Pascals | undefined {
  const z = ruleDeceleration(car.facts.catalogue.settings);
  const pressures = under.flatMap(({ braking }) => pointAtDeceleration(braking, z)?.pressure ?? []);
  return pressures.length === 0 ? undefined : pascals(Math.max(...pressures));
}

export const pedalForce: Rule = (facts) => {
  const judged = judge(facts);
  const { car: { pedal, facts: { assembly } } } = judged;
  const { settings } = facts.catalogue;
  const pressure = rulePressure(judged);
  if (!pedal || pedal.boosterUnknown || pressure === undefined) return [];
  const [force, rule] = [pedalForPressure(pedal, pressure), ruleFigures(settings)];
  const short = vacuumFor(pedal, pressure);
  const seen = `the stop of ${rule.name} takes ${sayForce(settings, force)} on the pedal, over ${sayForce(settings, rule.pedal)}`;
  const place = assembly.car.master ?? "pedal";
  const low = !pedal.assist && pedal.ratio < settings.manualPedalRatio;
  return [
    ...(force <= rule.pedal ? [] : low ? [finding("booster-none-low-ratio", { place, seen: `no booster, a pedal ratio of ${sayFigure(pedal.ratio)}, and ${seen}` })] : [finding("pedal-force-high", { place, seen })]),
    ...(pedal.assist && short > pedal.assist.vacuum ? [finding("vacuum-short", { place: pedal.assist.component.name, seen: `full assist to the stop of ${rule.name} takes ${sayVacuum(settings, short)}, and there is ${sayVacuum(settings, pedal.assist.vacuum)}` })] : []),
  ];
};

export const travel: Rule = (facts) => {
  const { circuits, share, hardestPressure } = travelOf(facts);
  const { settings } = facts.catalogue;
  const short = circuits.flatMap(({ circuit, stroke, needed, atHardest, displaces }) =>
    stroke === undefined || needed === undefined || needed <= stroke || !atHardest || displaces === undefined || hardestPressure === undefined ? [] : [finding("volume-short", {
      place: sayCircuit(circuit), seen: `${theCircuit(circuit)} takes ${sayVolume(settings, atHardest.total)} at ${sayPressure(settings, hardestPressure)} and its stroke displaces ${sayVolume(settings, displaces)}`,
    })]);
  if (share === undefined || share <= settings.travelLimit) return short;
  return [...short, finding("travel-long", { place: "pedal", seen: `the pedal uses ${sayShare(share)} of its travel at ${sayForce(settings, settings.travelForce)}, over ${sayShare(settings.travelLimit)}` })];
};

/** The figures that these rules would need, without those that hold up the lines themselves. */
function gapsOf(facts: CarFacts): readonly Gap[] {
  if (judge(facts).car.blocked !== undefined) return [];
  const gaps = [...travelOf(facts).missing, ...reservoirGap(facts)];
  return without(gaps, facts.assembly.questions.filter(({ blocks }) => blocks));
}

function reservoirGap({ assembly: { car }, catalogue, paths }: CarFacts): Gap[] {
  const platform = lookUp(catalogue.platforms, car.platform);
  if (!platform || reservoirHeight(car, platform) !== undefined || !paths.some(({ brake }) => brakeKind(brake) === "disc")) return [];
  return [{ table: "Platforms", column: "Reservoir above calipers", subject: platform.name }];
}

const reservoirHeight = (car: Car, platform: Platform | undefined): Metres | undefined => car.platformFigures.reservoirAboveCalipers ?? platform?.figures.reservoirAboveCalipers;

const without = (gaps: readonly Gap[], asked: readonly Gap[]): Gap[] =>
  gaps.filter((gap) => !asked.some(({ table, column, subject }) => table === gap.table && column === gap.column && subject === gap.subject));

interface RowGaps extends Omit<Gap, "column"> {
  readonly columns: readonly string[];
}

const byRow = (gaps: readonly Gap[]): RowGaps[] =>
  [...groupBy(gaps, ({ table, subject }) => `${table}|${subject}`).values()].map((group) => ({ ...(group[0] as Gap), columns: group.map(({ column }) => column) }));

export const balanceNotChecked: Rule = (facts) => {
  const rows = byRow(gapsOf(facts)).map(({ table, subject, columns }) => `${table} (${subject}): ${columns.join(", ")}`);
  return rows.length === 0 ? [] : [finding("balance-not-checked", { place: facts.assembly.car.name, seen: `no figures for ${rows.join("; ")}` })];
};

/** `What is the bore of MC-1?`; whether there is a booster at all is part of the question. */
function askFigures(columns: readonly string[], subject: string): string {
  if (columns.length === 1 && columns[0] === "Booster") return "Which booster is on the car, if any?";
  if (columns.length === 1 && (columns[0] === "Hoses" || columns[0] === "Valves")) return `Which ${columns[0].toLowerCase()} are on ${subject}, by their names in Components?`;
  const named = columns.map((column) => `the ${/^[A-Z]{2}/.test(column) ? column : `${column.charAt(0).toLowerCase()}${column.slice(1)}`}`);
  return named.length === 1 ? `What is ${named.join("")} of ${subject}?` : `What are ${named.slice(0, -1).join(", ")} and ${named.at(-1) ?? ""} of ${subject}?`;
}

/** One question a row of a table; they come after every question that decides the set. */
export const figureQuestions = (facts: CarFacts): Question[] =>
  byRow(without(gapsOf(facts), facts.assembly.questions)).map(({ table, subject, columns }) => ({
    table, column: columns.join(", "), subject, blocks: false, ask: askFigures(columns, subject), why: "the balance, the pedal or its travel cannot be checked",
  }));
