/** The Balance view: how the chosen car's braking is shared between its axles, drawn as the textbooks do, with the figures beside. */
import type { Gap } from "../core/balance/figures";
import { judge, type Judgement, type UnderLoad } from "../core/balance/judgement";
import { travelOf, type CarTravel } from "../core/balance/travel";
import { capital } from "../core/finding";
import { CAUTION } from "../core/caution";
import { sayFigure } from "../core/say-quantity";
import { placeOf } from "../workbook/row-place";
import type { CarLine, WorkbookReading } from "../workbook/workbook-reports";
import { balanceControls } from "./balance/controls";
import { balanceUnder, rowsAt, rowsOfGrip, rowsOfTravel, sayLocks, sayPedal, stopsOf } from "./balance/figures";
import { FORCES_HEIGHT, forcePlot, type Choice } from "./balance/force-plot";
import { gapList } from "./balance/gaps";
import { GRIP_HEIGHT, gripPlot } from "./balance/grip-plot";
import { plotKey, type KeyEntry } from "./balance/key";
import { PAPER_WIDTH } from "./balance/paper";
import { figureTable, stopTable } from "./balance/tables";
import { describeForces, describeGrip, forceKey, gripKey, sayCritical, sayEfficiency, sayLimit, sayOrder, sayWhatToDo } from "./balance/words";
import { carBar } from "./car-bar";
import { drawing, element } from "./element";
import type { View, ViewActions } from "./view";

interface Shown {
  readonly line: CarLine;
  readonly judged: Judgement;
  readonly travel: CarTravel;
}

export function balanceView(actions: ViewActions): View {
  const page = pageOf();
  const bar = carBar(actions);
  let shown: Shown | undefined;
  const draw = (): void => { if (shown) show(page, shown, controls.load(), controls.choice()); };
  const controls = balanceControls(draw);
  page.content.prepend(bar.content);
  page.controls.append(controls.content);
  return {
    id: "balance", name: "Balance", content: page.content,
    show: (reading) => {
      const line = bar.show(reading);
      shown = line && readCar(line, reading);
      page.note.replaceChildren(...noteOf(shown, line, actions));
      const under = shown?.judged.under ?? [];
      page.work.hidden = page.controls.hidden = under.length === 0;
      if (under.length === 0) return;
      controls.offer(under.map(({ load }) => load.load), reading.catalogue.settings);
      draw();
    },
  };
}

function readCar(line: CarLine, { catalogue }: WorkbookReading): Shown | undefined {
  const { report } = line;
  if (!report) return undefined;
  const { assembly, paths, runs } = report;
  return { line, judged: judge({ catalogue, assembly, paths }), travel: travelOf({ catalogue, assembly, paths, runs }) };
}

interface Page {
  readonly content: HTMLElement;
  readonly note: HTMLElement;
  readonly controls: HTMLElement;
  readonly work: HTMLElement;
}

function pageOf(): Page {
  const [note, controls, work] = [element("div", { class: "balance__note" }), element("div", {}), element("div", { class: "balance" })];
  return { content: element("div", { class: "balance-view" }, note, controls, work), note, controls, work };
}

/** What keeps the figures, or some of them, from being worked out. */
function noteOf(shown: Shown | undefined, line: CarLine | undefined, actions: ViewActions): HTMLElement[] {
  if (!line) return [];
  if (!shown) return [element("p", {}, "This row could not be worked out, so there is no balance. Its flags say why.")];
  const { judged: { car, under }, travel } = shown;
  const jump = (gap: Gap): void => { if (gap.table === "Cars") actions.selectRow(line.table, line.row, gap.column); else leadTo(gap, actions); };
  const gaps = gapList(under.length === 0 ? "The balance waits for these figures:" : "Figures still missing; what needs them is left open:", travel.missing, jump);
  const [question] = line.report?.questions ?? [];
  const blocked = car.blocked === undefined ? undefined : element("p", {}, `${capital(car.blocked)}, so there is no balance yet.`, question ? ` Ask first: ${question.ask}` : " Its flags say why.");
  return [blocked, gaps].filter((one) => one !== undefined);
}

function leadTo(gap: Gap, { inWorkbook }: ViewActions): void {
  void inWorkbook("That cell could not be shown.", async (port) => {
    const place = await placeOf(port, gap);
    if (!place) throw new Error(`No row of ${gap.table} is named ${gap.subject} yet: add it, with its ${gap.column}.`);
    await port.selectTableRow(place.table, place.row, place.column);
  });
}

/** Everything but the controls, which keep the focus. */
function show(page: Page, shown: Shown, load: UnderLoad["load"]["load"], choice: Choice): void {
  const { judged } = shown;
  const under = judged.under.find((one) => one.load.load === load) ?? judged.under[0];
  const balance = under && balanceUnder(judged, under);
  if (!balance) return;
  page.work.replaceChildren(summaryOf(shown, under), plotsOf(shown, under, choice), element("p", { class: "balance__caution" }, CAUTION), tablesOf(shown, under, choice));
}

function summaryOf({ judged }: Shown, under: UnderLoad): HTMLElement {
  const { settings } = judged.car.facts.catalogue;
  const balance = balanceUnder(judged, under);
  const critical = balance ? sayCritical(balance, settings) : "";
  return element("section", { class: "balance__summary", "aria-label": "What locks first" },
    element("p", { class: "balance__order" }, balance ? sayOrder(balance, settings) : ""),
    critical === "" ? undefined : element("p", {}, critical),
    element("p", { class: "balance__advice" }, element("strong", {}, "What to do: "), sayWhatToDo(judged)));
}

function plotsOf({ judged, line }: Shown, under: UnderLoad, choice: Choice): HTMLElement {
  const { settings } = judged.car.facts.catalogue;
  const balance = balanceUnder(judged, under);
  return element("div", { class: "balance__plots" },
    plot({ id: "forces", title: `Braking forces of ${line.name}`, description: describeForces(line.name, under), height: FORCES_HEIGHT, drawn: forcePlot(judged.car, under, judged.under, choice), key: forceKey(under, choice, settings), caption: sayLocks(under, choice) }),
    plot({ id: "grip", title: `Grip used by ${line.name}`, description: describeGrip(line.name, under), height: GRIP_HEIGHT, drawn: gripPlot(settings, under, choice), key: gripKey(choice), caption: balance ? sayLimit(balance, settings) : "" }));
}

interface Plot {
  readonly id: string;
  readonly title: string;
  readonly description: string;
  readonly height: number;
  readonly drawn: readonly SVGElement[];
  readonly key: readonly KeyEntry[];
  readonly caption: string;
}

function plot({ id, title, description, height, drawn, key, caption }: Plot): HTMLElement {
  return element("figure", { class: `plot plot--${id}` },
    drawing("svg", { class: "plot__sheet", viewBox: `0 0 ${PAPER_WIDTH} ${height}`, role: "img", "aria-labelledby": `plot-${id}-title plot-${id}-description`, focusable: "false" },
      drawing("title", { id: `plot-${id}-title` }, title),
      drawing("desc", { id: `plot-${id}-description` }, description),
      ...drawn),
    element("figcaption", {}, caption, plotKey(key)));
}

function tablesOf({ judged, travel }: Shown, under: UnderLoad, choice: Choice): HTMLElement {
  const { car } = judged;
  const { settings } = car.facts.catalogue;
  const [balance, at] = [balanceUnder(judged, under), rowsAt(car, under, choice)];
  return element("div", { class: "balance__tables" },
    element("div", { class: "balance__at" },
      at && figureTable(`At ${sayFigure(choice.z)} g, ${under.load.load}`, ["Front", "Rear"], at),
      element("p", { class: "balance__pedal", role: "status" }, sayPedal(car, under, choice))),
    balance && stopTable(car, stopsOf(car, balance)),
    balance && element("div", {}, figureTable("Grip used, and the most the limit allows", ["Front", "Rear", "Limit"], rowsOfGrip(balance, settings)), element("p", {}, sayEfficiency(balance))),
    figureTable("Pedal travel and stroke", [], rowsOfTravel(settings, travel)),
    element("section", { class: "assumed" },
      element("h3", { class: "gaps__heading" }, "Taken for granted"),
      element("ul", {}, ...(travel.assumed.length > 0 ? travel.assumed : ["nothing beyond the tables"]).map((text) => element("li", {}, text)))));
}
