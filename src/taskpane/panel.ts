/** The side panel: the same in the spreadsheet's pane and in the local page. */
import { rememberCatalogue, remembered } from "../functions/reports";
import { followWorkbook, type Following, type WorkbookListener, type WorkbookReading } from "../workbook/workbook-reports";
import type { CellValue, TablePlace, WorkbookPort } from "../workbook/port";
import { chosenCar } from "./car-list";
import { carsView } from "./cars-view";
import { cautionNote } from "./caution";
import { drawingView } from "./drawing-view";
import { element } from "./element";
import { emptyWorkbook } from "./empty-workbook";
import { failureNotice } from "./failure";
import { flagsView } from "./flags-view";
import { questionsView } from "./questions-view";
import { recall, remember } from "./remembered";
import { tabsOf, type Tabs } from "./tabs";
import { tubeView } from "./tube-view";
import type { View, ViewActions } from "./view";
import { sayNumber, sayVerdicts } from "./words";

export interface PanelOptions {
  /** Address of panel.css; left out when the host's page links it itself. */
  readonly stylesheet?: string;
}

export interface Panel {
  /** Takes the panel off the page and stops following the workbook. */
  unmount(): void;
}

/**
 * Puts the panel into an element or a shadow root and keeps it up to date with the workbook.
 * The panel is a labelled region of its host: the host supplies the page's landmarks.
 */
export function mountPanel(root: HTMLElement | ShadowRoot, port: WorkbookPort, options: PanelOptions = {}): Panel {
  const page = pageOf(port);
  const style = styled(page.content, options.stylesheet);
  root.append(...style, page.content);
  let following: Following | undefined;
  const start = (): void => { following = followWorkbook(port, listenerOf(page, () => following?.again()), sharedWithFunctions); };
  start();
  return {
    unmount: () => {
      following?.stop();
      for (const node of [...style, page.content]) node.remove();
    },
  };
}

/** One cache for both, so that a reopened file works without a recalculation and panel and sheet cannot disagree. */
const sharedWithFunctions = { report: remembered, catalogueRead: rememberCatalogue };

function listenerOf(page: PanelPage, again: () => void): WorkbookListener {
  return {
    reading: (reading) => { page.showReading(reading); },
    progress: (done, total) => { page.showProgress(done, total); },
    failed: (error) => { page.showFailure(error, () => { page.hideFailure(); again(); }); },
  };
}

/** Keeps the content out of sight until its style sheet is there, so that nothing jumps. */
function styled(content: HTMLElement, stylesheet: string | undefined): readonly HTMLElement[] {
  if (stylesheet === undefined) return [];
  const link = element("link", { rel: "stylesheet", href: stylesheet });
  const show = (): void => { content.hidden = false; };
  content.hidden = true;
  link.addEventListener("load", show);
  link.addEventListener("error", show); // unstyled is better than nothing
  return [link];
}

interface PanelPage {
  readonly content: HTMLElement;
  showReading(reading: WorkbookReading): void;
  showProgress(done: number, total: number): void;
  showFailure(error: unknown, retry: () => void): void;
  hideFailure(): void;
}

function pageOf(port: WorkbookPort): PanelPage {
  const state: { reading: WorkbookReading | undefined } = { reading: undefined };
  const message = messageLine();
  const progress = progressLine();
  const showChosen = (): void => { if (state.reading) views.find(({ id }) => id === tabs.chosen())?.show(state.reading); };
  const actions = actionsOf({ port, message, showChosen, turnTo: (view) => { tabs.turnTo(view); } });
  const views: readonly View[] = [flagsView(actions), carsView(actions), questionsView(actions), drawingView(actions), tubeView(actions)];
  const tabs = tabsOf("Views", views, { first: recall(VIEW), onChoose: (id) => {
      remember(VIEW, id);
      showChosen();
    },
  });
  const frame = frameOf({ tabs, progress, message });
  return {
    content: frame.content,
    showReading: (reading) => {
      state.reading = reading;
      progress.done();
      message.clear();
      frame.showProblem(undefined);
      frame.show(reading.cars.length === 0 && reading.tableErrors.length === 0 ? emptyWorkbook(reading.carTables) : undefined);
      showChosen();
      message.speak(reading.cars.length === 0 ? "No cars yet." : `Up to date. ${sayVerdicts(reading.cars.map(({ verdict }) => verdict))}.`);
    },
    showProgress: progress.show,
    showFailure: (error, retry) => {
      progress.done();
      frame.showProblem(failureNotice(error, retry));
    },
    hideFailure: () => { frame.showProblem(undefined); },
  };
}

/** Under which the chosen view is remembered. */
const VIEW = "view";

interface ActionParts {
  readonly port: WorkbookPort;
  readonly message: MessageLine;
  readonly showChosen: () => void;
  readonly turnTo: ViewActions["turnTo"];
}

function actionsOf({ port, message, showChosen, turnTo }: ActionParts): ViewActions {
  const chosen = chosenCar();
  return {
    turnTo,
    selectRow: (table, row, column) => void selectRow(port, message, { table, row, column }),
    writeCell: (place, value) => writeCell(port, message, place, value),
    carOf: chosen.of,
    chooseCar: (line) => {
      chosen.choose(line);
      showChosen();
    },
  };
}

interface Frame {
  readonly content: HTMLElement;
  /** Shows the views, or what there is to say instead. */
  show(instead: HTMLElement | undefined): void;
  showProblem(problem: HTMLElement | undefined): void;
}

interface FrameParts {
  readonly tabs: Tabs;
  readonly progress: ProgressLine;
  readonly message: MessageLine;
}

/** Tabs, views and caution stay out of sight until there is something to show, so that nothing on the page moves. */
function frameOf({ tabs, progress, message }: FrameParts): Frame {
  const name = element("h1", { class: "head__name" }, "Plumbline");
  const problem = element("div", { class: "problem" });
  const empty = element("div", { class: "view" });
  const views = element("div", { class: "views", hidden: true }, ...tabs.panels);
  const caution = cautionNote();
  const content = element("section", { class: "plumbline", "aria-label": "Plumbline" },
    element("header", { class: "head" }, name, tabs.strip, progress.bar), progress.text, message.visible, problem, empty, views, caution, message.spoken);
  for (const part of [tabs.strip, caution]) part.hidden = true;
  return {
    content,
    show: (instead) => {
      empty.replaceChildren(...(instead ? [instead] : []));
      for (const part of [views, tabs.strip]) part.hidden = instead !== undefined;
      name.classList.toggle("unseen", instead === undefined);
      caution.hidden = false;
    },
    showProblem: (shown) => {
      problem.replaceChildren(...(shown ? [shown] : []));
      caution.hidden = false;
    },
  };
}

interface Selected {
  readonly table: string;
  readonly row: number;
  readonly column: string | undefined;
}

const sayError = (error: unknown): string => (error instanceof Error ? error.message : String(error));

async function writeCell(port: WorkbookPort, message: MessageLine, place: TablePlace, value: CellValue): Promise<CellValue | undefined> {
  try {
    const before = await port.writeTableCell(place, value);
    message.clear();
    return before;
  } catch (error) {
    message.show(`${place.column} was not written. ${sayError(error)}`);
    return undefined;
  }
}

async function selectRow(port: WorkbookPort, message: MessageLine, { table, row, column }: Selected): Promise<void> {
  try {
    await port.selectTableRow(table, row, column);
    message.clear();
    message.speak(`Row ${row + 1} of ${table} is selected in the sheet.`);
  } catch (error) {
    message.show(`That row could not be selected. ${sayError(error)}`);
  }
}

interface MessageLine {
  readonly visible: HTMLElement;
  readonly spoken: HTMLElement;
  /** Said to screen readers only: what the page shows by itself. */
  speak(text: string): void;
  show(text: string): void;
  clear(): void;
}

function messageLine(): MessageLine {
  const visible = element("p", { class: "message", role: "alert", hidden: true });
  const spoken = element("p", { class: "unseen", role: "status" });
  return {
    visible, spoken,
    speak: (text) => { if (spoken.textContent !== text) spoken.textContent = text; },
    show: (text) => {
      visible.textContent = text;
      visible.hidden = false;
    },
    clear: () => { visible.hidden = true; },
  };
}

interface ProgressLine {
  readonly bar: HTMLElement;
  /** In sight until there is a first reading; after that the bar alone tells of work. */
  readonly text: HTMLElement;
  show(done: number, total: number): void;
  done(): void;
}

function progressLine(): ProgressLine {
  const bar = element("progress", { class: "progress__bar", "aria-label": "Cars worked out", hidden: true });
  const text = element("p", { class: "progress__text" }, "Reading the workbook …");
  return {
    bar, text,
    show: (done, total) => {
      bar.hidden = false;
      bar.max = total;
      bar.value = done;
      text.textContent = `Working out the cars: ${sayNumber(done)} of ${sayNumber(total)} …`;
    },
    done: () => { for (const part of [bar, text]) part.hidden = true; },
  };
}
