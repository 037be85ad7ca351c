/** The figures of the balance view as tables. */
import type { CarBraking } from "../../core/balance/car-braking";
import { ruleFigures } from "../../core/balance/rule-figures";
import { sayForce } from "../../core/say-quantity";
import type { Settings } from "../../core/settings";
import { drawing, element } from "../element";
import { figuresHere } from "../typed-number";
import { isOver, sayStop, type FigureRow, type StopRow } from "./figures";

/** @param headings of the columns beside the names; none makes no heading row */
export function figureTable(caption: string, headings: readonly string[], rows: readonly FigureRow[]): HTMLElement {
  return element("table", { class: "figures" },
    element("caption", {}, caption),
    headings.length === 0 ? undefined : element("thead", {}, element("tr", {}, element("td", {}), ...headings.map((heading) => element("th", { scope: "col" }, heading)))),
    element("tbody", {}, ...rows.map(({ name, cells, over }) => element("tr", { class: over ? "figures__over" : undefined },
      element("th", { scope: "row" }, figuresHere(name)),
      ...cells.map((cell, index) => element("td", {}, figuresHere(cell), over && index === Math.min(1, cells.length - 1) ? element("span", { class: "figures__word" }, headings.length > 0 ? " rears ahead" : " over") : undefined))))));
}

/** Each stop as a strip to the scale of the longest, with a post where the rule ends it. */
export function stopTable(car: CarBraking, stops: readonly StopRow[]): HTMLElement {
  const { settings } = car.facts.catalogue;
  const longest = Math.max(...stops.flatMap(({ stop, allowed }) => [allowed, stop && Number.isFinite(stop.distance) ? stop.distance : 0]));
  return element("table", { class: "figures figures--stops" },
    element("caption", {}, sayRule(settings)),
    element("tbody", {}, ...stops.map((row) => element("tr", { class: isOver(row) ? "figures__over" : undefined },
      element("th", { scope: "row" }, row.name),
      element("td", {}, stopStrip(row, longest), figuresHere(sayStop(settings, row)), isOver(row) ? element("span", { class: "figures__word" }, " too long") : undefined)))));
}

function sayRule(settings: Settings): string {
  const { name, speed, pedal } = ruleFigures(settings);
  const from = settings.units === "us" ? `${Math.round(speed / 0.44704)} mph` : `${Math.round(speed * 3.6)} km/h`;
  return `Stops against ${name}: from ${from}, at most ${sayForce(settings, pedal)}, adhesion ${settings.roadAdhesion}`;
}

const STRIP = { width: 200, height: 12 };

function stopStrip({ stop, allowed }: StopRow, longest: number): SVGSVGElement {
  const scale = (distance: number): number => Math.round((Math.min(distance, longest) / longest) * (STRIP.width - 4) * 10) / 10;
  const [end, post] = [stop ? scale(stop.distance) : 0, scale(allowed)];
  return drawing("svg", { class: "strip", viewBox: `0 0 ${STRIP.width} ${STRIP.height}`, preserveAspectRatio: "xMinYMid", "aria-hidden": true, focusable: "false" },
    drawing("path", { class: "strip__road", d: `M0 9.5H${STRIP.width}` }),
    end > 0 ? drawing("path", { class: "strip__way", d: `M0 6H${end}` }) : undefined,
    drawing("path", { class: "strip__post", d: `M${post} 11.5V1M${post} 1h-5v4h5` }));
}
