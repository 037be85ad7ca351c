/** The drawing of a car's lines as a picture for a sheet: on white, in the colours of the light panel, whatever the screen shows. */
import type { Catalogue } from "../../core/catalogue";
import type { CarReport } from "../../core/report";
import type { QuotePicture } from "../../workbook/sheets/quote-sheet";
import { drawPlan } from "../drawing/draw";
import { layOut } from "../drawing/layout";
import { sayCircuit, sketchOf } from "../drawing/sketch";
import { describe } from "../drawing/words";
import { drawing, element } from "../element";
import { count } from "../words";

/** Pixels of the picture for one of the drawing: enough for paper. */
const SHARPNESS = 2.5;

/**
 * @param place an element of the panel, whose style sheet gives the drawing its strokes
 * @returns undefined when no line of the car can be drawn yet
 * @throws Error when the host does not let a picture be made
 */
export async function pictureOf(report: CarReport, catalogue: Catalogue, place: HTMLElement): Promise<QuotePicture | undefined> {
  if (report.assembly.joints.length === 0) return undefined;
  const sketch = sketchOf(report, catalogue);
  const plan = layOut(sketch);
  const runs = report.runs.length;
  const alt = `Brake lines of ${[sketch.name, sketch.model].filter((text) => text !== "").join(", ")}, seen from above, nose up: ${sketch.circuits.map(sayCircuit).join(" and ")}, ${count(runs, "run")}.`;
  const { width, height } = plan;
  const marks = sketch.faults.map(({ letter, finding: { says } }) => [letter, says] as const);
  return { marks, png: await rasterised(standingAlone(drawPlan(sketch, plan, describe(sketch)).content, place), { width, height }), alt, width: Math.round(width), height: Math.round(height) };
}

/** What a stroke or a text looks like, as attributes that SVG knows. */
const LOOKS = ["fill", "fill-opacity", "stroke", "stroke-width", "stroke-opacity", "stroke-dasharray", "stroke-linecap", "stroke-linejoin", "font-size", "font-weight", "letter-spacing", "text-anchor"] as const;

/** A copy that needs no style sheet: a picture has none. */
function standingAlone(drawn: SVGSVGElement, place: HTMLElement): SVGSVGElement {
  const table = element("div", { class: "paper", hidden: true, "aria-hidden": true }, drawn);
  place.append(table);
  for (const node of drawn.querySelectorAll<SVGElement>("path, rect, circle, text")) {
    const { textTransform, ...computed } = pick(getComputedStyle(node));
    for (const [name, value] of Object.entries(computed)) node.setAttribute(name, value);
    if (node instanceof SVGTextElement && textTransform === "uppercase") node.textContent = node.textContent.toUpperCase();
    node.removeAttribute("class");
  }
  table.remove();
  for (const words of drawn.querySelectorAll("title, desc")) words.remove();
  return drawn;
}

function pick(style: CSSStyleDeclaration): Readonly<Record<string, string>> {
  return { textTransform: style.textTransform, ...Object.fromEntries(LOOKS.map((name) => [name, style.getPropertyValue(name)])) };
}

async function rasterised(content: SVGSVGElement, { width, height }: { readonly width: number; readonly height: number }): Promise<string> {
  content.setAttribute("width", String(width));
  content.setAttribute("height", String(height));
  content.setAttribute("font-family", "Arial, Helvetica, sans-serif");
  content.prepend(drawing("rect", { width: "100%", height: "100%", fill: "#ffffff" }));
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(new XMLSerializer().serializeToString(content))}`;
  await image.decode();
  const canvas = element("canvas", { width: Math.round(width * SHARPNESS), height: Math.round(height * SHARPNESS) });
  const pen = canvas.getContext("2d");
  if (!pen) throw new Error("This host gives no canvas to draw on.");
  pen.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas.toDataURL("image/png").replace(/^data:image\/png;base64,/, "");
}
