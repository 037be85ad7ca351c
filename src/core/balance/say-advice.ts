/** The adviser in a sentence. */
import { bar, inches, millimetres, pascals, psi, type Metres, type Pascals } from "../quantity";
import type { Settings } from "../settings";
import { sayFigure, sayLength, sayPressure, sayShare } from "../say-quantity";
import { adviseOn } from "./advice";
import type { Judgement } from "./judgement";

/** What to fit or set so that the fronts lock first, best first; said as a cure. */
export function sayAdvice(judged: Judgement): string {
  const { settings } = judged.car.facts.catalogue;
  const { valves: [valve], bore } = adviseOn(judged);
  const ways = [
    ...(valve ? [`${valve.isOnCar ? "set" : "fit"} ${valve.component ?? "a valve"}${valve.isOnCar ? " to" : valve.component ? ", set to" : " with a split point of"} ${sayPressure(settings, downTo(pressureStep(settings), valve.split))} (slope ${sayFigure(downTo(0.01, valve.slope))}, efficiency ${sayShare(valve.efficiency)})`] : []),
    ...(bore ? [`fit rear cylinders of ${sayLength(settings, downTo(lengthStep(settings), bore.bore))} (efficiency ${sayShare(bore.efficiency)})`] : []),
  ];
  return ways.length === 0 ? "a lower split point or slope, or smaller rear cylinders" : `${ways.join(", or ")}: there the fronts just lock first under every load stated`;
}

/** The settings of an adjustable valve that keep the fronts first, where nobody has said how it is set; undefined where there is none such. */
export function sayPassingSettings({ setting, car, under }: Judgement): string | undefined {
  if (!setting?.passes || under.length === 0) return undefined;
  const { settings } = car.facts.catalogue;
  const [least, most] = [sayPressure(settings, pascals(setting.passes.from)), setting.passes.to === Infinity ? "no reduction" : sayPressure(settings, downTo(pressureStep(settings), pascals(setting.passes.to)))];
  return `${setting.name} is adjustable and its setting is not stated: from ${least} to ${most} the fronts lock first, and the highest loses least.`;
}

/** Figures are said rounded down: a shade less at the rear keeps the order that the exact figure just meets. */
const downTo = <T extends number>(step: number, value: T): T => (Math.floor(value / step + 1e-9) * step) as T;
const pressureStep = ({ units }: Settings): Pascals => (units === "us" ? psi(1) : bar(0.1));
const lengthStep = ({ units }: Settings): Metres => (units === "us" ? inches(0.001) : millimetres(0.1));
