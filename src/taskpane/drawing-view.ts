/** The Drawing view: the lines of the chosen car from above, and the same in lists. What is picked in one is marked in the other. */
import type { CarLine, WorkbookReading } from "../workbook/workbook-reports";
import { carBar } from "./car-bar";
import { drawPlan, type DrawnPlan } from "./drawing/draw";
import { onFault } from "./drawing/faults";
import { layOut } from "./drawing/layout";
import { listsOf, sayPicked } from "./drawing/lists";
import { sketchOf, type Sketch } from "./drawing/sketch";
import { tableRows, type TableRows } from "./drawing/table-rows";
import { viewportOf, zoomStep, type Viewport } from "./drawing/viewport";
import { describe } from "./drawing/words";
import { element } from "./element";
import { cellAtFault } from "./flag-cell";
import type { View, ViewActions } from "./view";

interface Drawn {
  readonly line: CarLine;
  readonly report: CarLine["report"];
  readonly catalogue: WorkbookReading["catalogue"];
  readonly sketch: Sketch;
  readonly plan: DrawnPlan;
  readonly rows: TableRows;
}

export function drawingView(actions: ViewActions): View {
  const [page, bar] = [pageOf(), carBar(actions)];
  const viewport = viewportOf(page.frame);
  page.content.prepend(bar.content);
  page.tools.append(...toolButtons(viewport));
  let [drawn, picked]: [Drawn | undefined, readonly string[]] = [undefined, []];
  const pick = (keys: readonly string[]): void => {
    picked = keys;
    if (drawn) mark(page, drawn, keys);
  };
  const follow = (target: EventTarget | null, fromList: boolean): void => {
    const key = keyUnder(target);
    if (key === undefined || !drawn) return;
    pick([key]);
    if (fromList) bringIntoSight(page.frame, key);
    actions.selectRow(...rowFor(drawn, key));
  };
  page.frame.addEventListener("click", ({ target }) => { follow(target, false); });
  page.lists.addEventListener("click", ({ target }) => { if (target instanceof Element && target.closest("button")) follow(target, true); });
  return {
    id: "drawing", name: "Drawing", content: page.content,
    show: (reading) => {
      const line = bar.show(reading);
      if (drawn && drawn.report === line?.report && drawn.catalogue === reading.catalogue) {
        drawn = line ? { ...drawn, line } : undefined;
        return;
      }
      const sameCar = drawn?.line.name === line?.name;
      drawn = line && draw(page, line, reading);
      if (drawn) viewport.attach(drawn.plan.content, drawn.plan.sheet);
      pick(sameCar ? picked : []);
    },
    stand: (place) => {
      const keys = drawn?.rows.keysAt(place) ?? [];
      // What was picked here led to that row itself.
      if (!keys[0] || picked.some((key) => keys.includes(key))) return;
      pick(keys);
      bringIntoSight(page.frame, keys[0]);
    },
  };
}

interface Page {
  readonly content: HTMLElement;
  readonly note: HTMLElement;
  readonly work: HTMLElement;
  readonly frame: HTMLElement;
  readonly tools: HTMLElement;
  readonly picked: HTMLElement;
  readonly lists: HTMLElement;
}

function pageOf(): Page {
  const note = element("p", { class: "drawing__note" });
  const frame = element("div", { class: "drawing__frame", role: "group", tabindex: 0, "aria-label": "Drawing: plus and minus zoom, 0 shows the whole, the arrow keys move a zoomed drawing" });
  const tools = element("div", { class: "drawing__tools", role: "group", "aria-label": "Size of the drawing" });
  const picked = element("p", { class: "drawing__picked", role: "status" });
  const lists = element("div", { class: "drawing__lists" });
  const work = element("div", { class: "drawing" }, element("div", { class: "drawing__board" }, tools, frame, picked), lists);
  return { content: element("div", { class: "drawing-view" }, note, work), note, work, frame, tools, picked, lists };
}

function toolButtons({ zoom, fit }: Viewport): HTMLElement[] {
  const button = (text: string, label: string, act: () => void): HTMLElement => {
    const made = element("button", { type: "button", class: "button button--plain drawing__tool", "aria-label": label }, text);
    made.addEventListener("click", act);
    return made;
  };
  return [button("−", "Smaller", () => { zoom(1 / zoomStep); }), button("+", "Larger", () => { zoom(zoomStep); }), button("Whole car", "Show the whole car", fit)];
}

function draw(page: Page, line: CarLine, { catalogue, catalogueTables }: WorkbookReading): Drawn | undefined {
  const { report } = line;
  page.work.hidden = report === undefined;
  page.note.textContent = report ? sayOpen(report) : "This row could not be worked out, so there is nothing to draw. Its flags say why.";
  if (!report) return undefined;
  const sketch = sketchOf(report, catalogue);
  const plan = drawPlan(sketch, layOut(sketch), describe(sketch));
  page.frame.replaceChildren(plan.content);
  page.lists.replaceChildren(...listsOf(sketch, report, catalogue.settings.units));
  return { line, report, catalogue, sketch, plan, rows: tableRows(sketch, report.car, catalogueTables) };
}

/** A drawing without lines says which answer it waits for. */
function sayOpen({ assembly, questions, runs }: NonNullable<CarLine["report"]>): string {
  const waiting = questions.find(({ blocks }) => blocks);
  if (assembly.joints.length === 0) return `No line is drawn, because each would be a guess. ${waiting ? `Ask first: ${waiting.ask}` : "The flags say what is missing."}`;
  const short = runs.filter(({ length, tube }) => length === undefined || tube === undefined).length;
  return short > 0 && waiting ? `A question mark stands where a tube or a length is not known. Ask first: ${waiting.ask}` : "";
}

/** What was clicked: a fault before the line it is marked on, a line before the part behind it. */
function keyUnder(target: EventTarget | null): string | undefined {
  if (!(target instanceof Element)) return undefined;
  const fault = target.closest<HTMLElement | SVGElement>("[data-fault]")?.dataset["fault"];
  return fault === undefined ? target.closest<HTMLElement | SVGElement>("[data-key]")?.dataset["key"] : onFault(fault);
}

/** What has no row of its own leads to its car's, a fault to the cell there that causes it. */
function rowFor({ sketch, rows, line }: Drawn, key: string): Parameters<ViewActions["selectRow"]> {
  const own = rows.rowOf(key);
  const fault = sketch.faults.find(({ letter }) => onFault(letter) === key);
  return own ? [own.table, own.row] : [line.table, line.row, fault && cellAtFault(fault.finding)];
}

function mark(page: Page, { sketch, plan }: Drawn, picked: readonly string[]): void {
  const keys = new Set(picked.flatMap((key) => keysOf(sketch, key)));
  for (const node of plan.content.querySelectorAll<SVGElement>("[data-key]")) node.classList.toggle("is-picked", keys.has(node.dataset["key"] ?? ""));
  for (const node of plan.content.querySelectorAll<SVGElement>("[data-fault]")) node.classList.toggle("is-picked", picked.includes(onFault(node.dataset["fault"])));
  for (const node of page.lists.querySelectorAll<HTMLElement>("li")) {
    const button = node.querySelector("button");
    if (button && picked.includes(keyUnder(button) ?? "")) node.setAttribute("aria-current", "true");
    else node.removeAttribute("aria-current");
  }
  page.picked.textContent = picked.map((key) => sayPicked(sketch, key)).join(" ");
}

/** A fault marks everything it is about. */
const keysOf = ({ faults }: Sketch, key: string): readonly string[] => faults.find(({ letter }) => onFault(letter) === key)?.on ?? [key];

function bringIntoSight(frame: HTMLElement, key: string): void {
  const node = [...frame.querySelectorAll<SVGElement>("[data-key], [data-fault]")].find(({ dataset }) => dataset["key"] === key || onFault(dataset["fault"]) === key);
  node?.scrollIntoView({ block: "nearest", inline: "nearest" });
}
