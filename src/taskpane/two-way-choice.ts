/** A choice between two ways of showing a view; the first stands until the other is chosen. */
import { element } from "./element";

export interface TwoWayChoice {
  readonly content: HTMLElement;
  readonly isSecond: () => boolean;
}

export interface Way {
  readonly value: string;
  readonly text: string;
}

/** @param legend what is chosen, for screen readers */
export function twoWayChoice(name: string, legend: string, [one, other]: readonly [Way, Way]): TwoWayChoice {
  const choice = ({ value, text }: Way, checked: boolean) => {
    const input = element("input", { type: "radio", class: "unseen", name, value, checked });
    return { input, label: element("label", { class: "choice choice--plain" }, input, element("span", { class: "choice__word" }, text)) };
  };
  const [first, second] = [choice(one, true), choice(other, false)];
  const content = element("fieldset", { class: "choices choices--two" }, element("legend", { class: "unseen" }, legend), first.label, second.label);
  return { content, isSecond: () => second.input.checked };
}
