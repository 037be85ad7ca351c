/** The caution that stands at the foot of every view. */
import { element } from "./element";

export function cautionNote(): HTMLElement {
  return element("aside", { class: "caution", "aria-label": "Caution" },
    element("p", {}, element("strong", {}, "Brakes can kill."), " These are estimates from the data entered. A qualified person inspects and tests the car before it is driven."),
    element("details", {},
      element("summary", {}, "The whole caution"),
      element("ul", {}, ...long.map((sentence) => element("li", {}, sentence)))));
}

const long = [
  "Every figure is an estimate from what the tables say. Wrong or old data gives a wrong answer.",
  "A qualified person inspects and tests the car.",
  "Local codes and the service data of the car's maker come first.",
  "Pressure-test every joint and bleed the brakes before driving.",
  "What is not known is asked or marked as assumed. It is never filled in silently.",
];
