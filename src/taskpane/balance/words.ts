/** The balance in sentences: what locks first, what to do about it, and what the drawings show. */
import type { CarBalance } from "../../core/balance/balance-of";
import { rearAhead } from "../../core/balance/rear-ahead";
import { rearAheadWithin, type Judgement, type UnderLoad } from "../../core/balance/judgement";
import { sayAdvice, sayPassingSettings } from "../../core/balance/say-advice";
import { capital } from "../../core/finding";
import { sayFigure, sayShare } from "../../core/say-quantity";
import { settingEntries, type Settings } from "../../core/settings";
import { figuresHere } from "../typed-number";
import type { Choice } from "./force-plot";
import type { KeyEntry } from "./key";

/** Which axle locks first on which roads, under one load. */
export function sayOrder({ under: { load }, rearFirst }: CarBalance, { highestAdhesion, balanceFrom }: Settings): string {
  const name = capital(load.load);
  const early = rearFirst.find(({ to }) => to < balanceFrom);
  const late = rearFirst.filter((one) => one !== early).map(({ from, to }) => `${sayFigure(from)} to ${sayFigure(to)}`);
  if (late.length > 0) return figuresHere(`${name}, the rears lock first on adhesion ${late.join(" and ")}; on other roads the fronts.`);
  const roads = early ? `from adhesion ${sayFigure(early.to)} to ${sayFigure(highestAdhesion)}` : `up to adhesion ${sayFigure(highestAdhesion)}`;
  return figuresHere(`${name}, the fronts lock first on every road ${roads}.`);
}

/** Where both axles lock at once, as far as a road gives it. */
export function sayCritical({ critical }: CarBalance, { highestAdhesion, balanceFrom }: Settings): string {
  const those = critical.filter((z) => z >= balanceFrom && z <= highestAdhesion).map((z) => `${sayFigure(z)} g`);
  return those.length === 0 ? "" : figuresHere(`Critical deceleration ${those.join(" and ")}: there both axles use the same grip, and their order changes.`);
}

export function sayEfficiency({ efficiency }: CarBalance): string {
  return figuresHere(`Braking efficiency ${efficiency.map(({ adhesion, value }) => `${value === undefined ? "not known" : sayShare(value)} on ${sayFigure(adhesion)}`).join(", ")}.`);
}

/** Advice that holds for every load; that nothing is to be done is said too. */
export function sayWhatToDo(judged: Judgement): string {
  const { balanceTo } = judged.car.facts.catalogue.settings;
  if (judged.under.some((one) => rearAheadWithin(one).length > 0)) return `${capital(sayAdvice(judged))}.`;
  const from = Math.max(...judged.under.map(({ range }) => range.from));
  return sayPassingSettings(judged) ?? `Nothing to set right in the order of locking: from ${sayFigure(from)} to ${sayFigure(balanceTo)} g the fronts use more grip than the rears, ${judged.under.map(({ load }) => load.load).join(" and ")}.`;
}

/** The limit of the grip plot, with where it comes from. */
export function sayLimit({ line }: CarBalance, settings: Settings): string {
  const entry = settingEntries.find(({ key }) => key === "efficiencyLine");
  const against = line === undefined ? "" : line.margin < 0 ? ` This car falls ${sayFigure(-line.margin, 3)} g short of it at ${sayFigure(line.z)} g.` : ` This car stays ${sayFigure(line.margin, 3)} g clear of it.`;
  const none = settings.stoppingRule === "49 CFR 571.105" ? " 49 CFR 571.105, the rule picked for stops, has no such line." : "";
  return `Limit of the rules, z the deceleration in g and k the grip used: z ≥ 0.1 + ${sayFigure(settings.efficiencyLine)} (k − 0.2) for k from 0.2 to 0.8 (${entry?.source ?? ""}).${none}${against}`;
}

export const describeForces = (name: string, under: UnderLoad): string =>
  `Front braking force across, rear up, both over the weight of ${name}, ${under.load.load}. Where the line of the car lies above the hatched ideal curve the rears use more grip than the fronts. The figures stand in the tables beside it.`;

export const describeGrip = (name: string, under: UnderLoad): string =>
  `Grip that each axle of ${name} uses over the deceleration, ${under.load.load}, with the limit of the rules. The figures stand in the table beside it.`;

export function forceKey({ braking }: UnderLoad, { z, adhesion }: Choice, { highestAdhesion }: Settings): readonly KeyEntry[] {
  const ahead: readonly KeyEntry[] = rearAhead(braking).some(({ from }) => from < highestAdhesion) ? [["ahead", "there the rears use more grip"]] : [];
  return [
    ["installed", "this car, from rest up"], ...ahead, ["ideal", "both axles use the same grip; on the hatched side the rears more"],
    ["front", `fronts lock, adhesion ${sayFigure(adhesion)}`], ["rear", `rears lock, adhesion ${sayFigure(adhesion)}`],
    ["chosen", `${sayFigure(z)} g`], ["same", "other decelerations"],
  ];
}

export const gripKey = ({ z, adhesion }: Choice): readonly KeyEntry[] => [
  ["front-used", "fronts"], ["rear-used", "rears"], ["same", "all grip used"], ["limit", "limit, not to be passed"],
  ["chosen", `${sayFigure(z)} g`], ["road", `adhesion ${sayFigure(adhesion)}`], ["range", "the order of locking is judged here"],
];
