/** The local page: grid and panel beside each other, files opened and saved, work kept over a reload. */
import * as library from "@odoo/o-spreadsheet";
import { mountPanel } from "../taskpane/panel";
import { todayHere } from "../taskpane/today";
import { type WorkbookDocument } from "../workbook/document";
import { type WorkbookPort } from "../workbook/port";
import { readXlsx, WorkbookFileError } from "../workbook/xlsx/read";
import { writeXlsx } from "../workbook/xlsx/write";
import { demoDocument } from "./demo-document";
import { gridPort } from "./grid-port";
import { type Grid, openGrid } from "./grid/grid";
import { mountGrid } from "./grid/view";
import { byId, pageMessages } from "./page-messages";
import { productFunctions } from "./product-functions";
import { keepSession, type SessionKeeper } from "./session-keeper";
import { offerSessions } from "./session-offer";
import { browserSessions, type KeptSession } from "./session-store";
import panelStylesheet from "../taskpane/panel.css";
import "./grid.css";
import "./page.css";

/** The workbook that is open, and how to take it away. */
interface OpenWorkbook {
  readonly grid: Grid;
  close(): void;
}

const messages = pageMessages(document);
const sheet = byId(document, "sheet", HTMLElement);
const panel = byId(document, "panel", HTMLElement).attachShadow({ mode: "open" });
const fileName = byId(document, "file-name", HTMLElement);
const filePicker = byId(document, "file", HTMLInputElement);
/** As page.html says it. */
const DEMO_NAME = "Demo workbook";
let templates = "";
let open: OpenWorkbook | undefined;
let unsaved = false;
let keeper: SessionKeeper | undefined;

async function show(workbook: WorkbookDocument, name: string): Promise<void> {
  const grid = openGrid(library, workbook, productFunctions);
  document.documentElement.dataset["ready"] = "false";
  open?.close();
  sheet.replaceChildren();
  const view = await mountGrid(library, grid, { element: sheet, templates, messages });
  const shown = mountPanel(panel, showingPort(grid, name), { stylesheet: panelStylesheet, openDemo, isSheetInSight: () => sheet.checkVisibility() });
  open = {
    grid,
    close: () => {
      view.unmount();
      shown.unmount();
    },
  };
  setSaved();
  grid.onEdit(setUnsaved);
  document.documentElement.dataset["ready"] = "true";
}

function setUnsaved(): void {
  unsaved = true;
  keeper?.changed();
}

function setSaved(): void {
  unsaved = false;
  keeper?.saved();
}

/** The port, which also brings the sheet into sight when a row is selected and the panel has the screen. */
function showingPort(grid: Grid, name: string): WorkbookPort {
  const port = gridPort(grid, name);
  return {
    ...port,
    selectTableRow: (table, row, column) => {
      choose("sheet");
      return port.selectTableRow(table, row, column);
    },
  };
}

async function openFile(file: File): Promise<void> {
  try {
    const workbook = readXlsx(new Uint8Array(await file.arrayBuffer()));
    await show(workbook, file.name);
    fileName.textContent = file.name;
    const { leftOut = [] } = workbook;
    if (leftOut.length > 0) messages.error(`This page does not show, and will not save: ${leftOut.join(", ")}. The file itself is as it was.`);
  } catch (problem) {
    const reason = problem instanceof WorkbookFileError ? problem.message : `It cannot be shown here (${String(problem)}).`;
    messages.error(`${file.name} was not opened. ${reason} The workbook that was open is still here.`);
  }
}

async function showDemo(): Promise<void> {
  fileName.textContent = DEMO_NAME;
  await show(demoDocument(todayHere()), downloadName(DEMO_NAME));
}

function openDemo(): void {
  const goOn = (): void => void messages.during("Opening the demo…", showDemo);
  if (unsaved) messages.ask("Open the demo and lose the changes that are not saved?", goOn);
  else goOn();
}

function chooseFile(): void {
  const [file] = filePicker.files ?? [];
  filePicker.value = "";
  if (!file) return;
  const goOn = (): void => void messages.during(`Opening ${file.name}…`, () => openFile(file));
  if (unsaved) messages.ask(`Open ${file.name} and lose the changes that are not saved?`, goOn);
  else goOn();
}

function saveFile(): void {
  if (!open) return;
  try {
    handOver(writeXlsx(open.grid.document()), downloadName(fileName.textContent));
    setSaved();
  } catch (problem) {
    messages.error(`The workbook was not saved (${String(problem)}). It is still open here.`);
  }
}

function handOver(bytes: Uint8Array, name: string): void {
  const address = URL.createObjectURL(new Blob([bytes as BlobPart], { type: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet" }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // Let the browser take the file before its address goes.
  setTimeout(() => { URL.revokeObjectURL(address); }, 60_000);
}

/** What is saved holds no macros, so a workbook with them is not saved under its own name. */
const downloadName = (shown: string): string => (/\.xls[xm]$/i.test(shown) ? shown.replace(/m$/i, "x") : "plumbline-demo.xlsx");

/** On a narrow screen one of the two is shown. */
function choose(part: "sheet" | "panel"): void {
  document.body.dataset["shows"] = part;
  for (const each of ["sheet", "panel"] as const) byId(document, `show-${each}`, HTMLElement).setAttribute("aria-pressed", String(each === part));
  // The grid measures itself when the window changes.
  window.dispatchEvent(new Event("resize"));
}

function listen(): void {
  byId(document, "open", HTMLElement).addEventListener("click", () => { filePicker.click(); });
  byId(document, "save", HTMLElement).addEventListener("click", () => { void messages.during("Saving…", saveFile); });
  byId(document, "show-sheet", HTMLElement).addEventListener("click", () => { choose("sheet"); });
  byId(document, "show-panel", HTMLElement).addEventListener("click", () => { choose("panel"); });
  filePicker.addEventListener("change", chooseFile);
  window.addEventListener("beforeunload", (event) => {
    void keeper?.keepNow();
    if (unsaved) event.preventDefault();
  });
  document.addEventListener("visibilitychange", () => { void keeper?.keepNow(); });
}

/** Offers what earlier pages left, and keeps this page's workbook from now on. */
async function keepSessions(): Promise<void> {
  const [store, id] = [browserSessions(), crypto.randomUUID()];
  const firstOrder = await offerSessions({ page: document, store, open: openKept, say: messages.error });
  store.claim(id).catch(() => undefined); // without it two pages may offer each other's workbook, and nothing else
  keeper = keepSession({ store, id, firstOrder, now: Date.now, failed: messages.error, snapshot: () => ({ name: fileName.textContent, document: open?.grid.document() ?? { sheets: [] } }) });
  if (unsaved) keeper.changed();
}

async function openKept({ name, document: workbook }: KeptSession): Promise<boolean> {
  if (unsaved && !(await new Promise<boolean>((answer) => { messages.ask(`Open ${name} and lose the changes made here since?`, () => { answer(true); }, () => { answer(false); }); }))) return false;
  await messages.during(`Opening ${name}…`, () => show(workbook, name));
  fileName.textContent = name;
  setUnsaved();
  await keeper?.keepNow();
  return true;
}

async function start(): Promise<void> {
  choose("sheet");
  listen();
  templates = await (await fetch("grid/o_spreadsheet.xml")).text();
  await showDemo();
  await keepSessions();
}

start().catch((problem: unknown) => {
  messages.error(`The page could not start: ${problem instanceof Error ? problem.message : String(problem)}`);
});
