/** What the balance is looked at with: the load, a deceleration and an adhesion. */
import type { LoadCase } from "../../core/balance/car-braking";
import { sayFigure } from "../../core/say-quantity";
import type { Settings } from "../../core/settings";
import { element } from "../element";
import { twoWayChoice } from "../two-way-choice";
import type { Choice } from "./force-plot";

export interface BalanceControls {
  readonly content: HTMLElement;
  readonly load: () => LoadCase["load"];
  readonly choice: () => Choice;
  /** Offers what the car has, and begins at the figures of Settings. */
  offer(loads: readonly LoadCase["load"][], settings: Settings): void;
}

export function balanceControls(onChange: () => void): BalanceControls {
  const load = twoWayChoice("balance-load", "Load", [{ value: "unladen", text: "Unladen" }, { value: "laden", text: "Laden" }]);
  const z = slider("balance-deceleration", "Deceleration", (value) => `${sayFigure(value)} g`);
  const adhesion = slider("balance-adhesion", "Adhesion of the road", (value) => `${sayFigure(value)}, ${sayRoad(value)}`);
  const content = element("div", { class: "balance__controls", role: "group", "aria-label": "What is looked at" }, load.content, z.content, adhesion.content);
  content.addEventListener("input", () => {
    for (const one of [z, adhesion]) one.say();
    onChange();
  });
  let begun = false;
  return {
    content,
    load: () => (load.isSecond() ? "laden" : "unladen"),
    choice: () => ({ z: z.value(), adhesion: adhesion.value() }),
    offer: (loads, { highestAdhesion, middleDeceleration, efficiencyAdhesion }) => {
      load.content.hidden = loads.length < 2;
      for (const one of [z, adhesion]) one.reachTo(highestAdhesion);
      if (begun) return;
      z.begin(middleDeceleration);
      adhesion.begin(efficiencyAdhesion);
      begun = true;
    },
  };
}

/** Least adhesion of each road, before its wheels slide. From a handbook's table (read): good dry 1.00, good wet 0.90, poor dry 0.80, poor wet 0.60, ice 0.25; the middles between them part them. */
const ROADS = [[0.95, "good and dry"], [0.85, "good and wet"], [0.7, "poor and dry"], [0.425, "poor and wet"], [0, "ice"]] as const;
export const sayRoad = (adhesion: number): string => ROADS.find(([least]) => adhesion >= least)?.[1] ?? "ice";

interface Slider {
  readonly content: HTMLElement;
  readonly value: () => number;
  begin(value: number): void;
  reachTo(most: number): void;
  /** Brings the words beside it up to date. */
  say(): void;
}

function slider(id: string, name: string, words: (value: number) => string): Slider {
  const input = element("input", { type: "range", id, class: "slider__input", min: 0.1, max: 1, step: 0.01, value: 0.5 });
  const output = element("output", { for: id, class: "slider__value" });
  const say = (): void => {
    output.textContent = words(input.valueAsNumber);
    input.setAttribute("aria-valuetext", words(input.valueAsNumber));
  };
  return {
    content: element("div", { class: "slider" }, element("label", { for: id }, name), output, input),
    value: () => input.valueAsNumber,
    begin: (value) => { input.valueAsNumber = value; say(); },
    reachTo: (most) => { input.max = String(most); say(); },
    say,
  };
}
