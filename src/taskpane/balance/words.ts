/** The balance in sentences: what locks first, what to do about it, and what the drawings show. */
import type { CarBalance } from "../../core/balance/balance-of";
import { rearAheadWithin, type Judgement, type UnderLoad } from "../../core/balance/judgement";
import { sayAdvice, sayPassingSettings } from "../../core/balance/say-advice";
import { capital } from "../../core/finding";
import { sayFigure, sayShare } from "../../core/say-quantity";
import { settingEntries, type Settings } from "../../core/settings";

/** Which axle locks first on which roads, under one load. */
export function sayOrder({ under: { load }, rearFirst }: CarBalance, { highestAdhesion }: Settings): string {
  const where = rearFirst.filter(({ to }) => to - rearFirstNoise > 0).map(({ from, to }) => `${sayFigure(from)} to ${sayFigure(to)}`);
  const name = capital(load.load);
  if (where.length === 0) return `${name}, the fronts lock first on every road up to adhesion ${sayFigure(highestAdhesion)}.`;
  return `${name}, the rears lock first on adhesion ${where.join(" and ")}; on other roads the fronts.`;
}
const rearFirstNoise = 0.01;

/** Where both axles lock at once, as far as a road gives it. */
export function sayCritical({ critical }: CarBalance, { highestAdhesion }: Settings): string {
  const those = critical.filter((z) => z >= rearFirstNoise && z <= highestAdhesion).map((z) => `${sayFigure(z)} g`);
  return those.length === 0 ? "" : `Critical deceleration ${those.join(" and ")}: there both axles use the same grip, and their order changes.`;
}

export function sayEfficiency({ efficiency }: CarBalance): string {
  return `Braking efficiency ${efficiency.map(({ adhesion, value }) => `${value === undefined ? "not known" : sayShare(value)} on ${sayFigure(adhesion)}`).join(", ")}.`;
}

/** Advice that holds for every load; that nothing is to be done is said too. */
export function sayWhatToDo(judged: Judgement): string {
  const { balanceTo } = judged.car.facts.catalogue.settings;
  if (judged.under.some((one) => rearAheadWithin(one).length > 0)) return `${capital(sayAdvice(judged))}.`;
  const from = Math.max(...judged.under.map(({ range }) => range.from));
  return sayPassingSettings(judged) ?? `Nothing to set right: from ${sayFigure(from)} to ${sayFigure(balanceTo)} g the fronts use more grip than the rears, ${judged.under.map(({ load }) => load.load).join(" and ")}.`;
}

/** The limit of the grip plot, with where it comes from. */
export function sayLimit({ line }: CarBalance, settings: Settings): string {
  const entry = settingEntries.find(({ key }) => key === "efficiencyLine");
  const against = line === undefined ? "" : line.margin < 0 ? ` This car falls ${sayFigure(-line.margin, 3)} g short of it at ${sayFigure(line.z)} g.` : ` This car stays ${sayFigure(line.margin, 3)} g clear of it.`;
  const none = settings.stoppingRule === "49 CFR 571.105" ? " 49 CFR 571.105, the rule picked for stops, has no such line." : "";
  return `Limit: z ≥ 0.1 + ${sayFigure(settings.efficiencyLine)} (k − 0.2) for k from 0.2 to 0.8 (${entry?.source ?? ""}).${none}${against}`;
}

export const describeForces = (name: string, under: UnderLoad): string =>
  `Front braking force across, rear up, both over the weight of ${name}, ${under.load.load}. Where the line of the car lies above the hatched ideal curve the rears use more grip than the fronts. The figures stand in the tables beside it.`;

export const describeGrip = (name: string, under: UnderLoad): string =>
  `Grip that each axle of ${name} uses over the deceleration, ${under.load.load}, with the limit of the rules. The figures stand in the table beside it.`;
