/** The panel in a page of jsdom over a workbook, with a port between them that counts what is asked and can fail any of it. */
import { JSDOM } from "jsdom";
import { demoTables } from "../../src/catalogue/demo";
import { mountPanel } from "../../src/taskpane/panel";
import type { TableContent, WorkbookPort } from "../../src/workbook/port";
import { memoryBook, type Book, type OpenBook } from "./books";

export interface CountingPort {
  readonly port: WorkbookPort;
  /** Names of the calls since the last reset, in order. */
  readonly calls: readonly string[];
  reset(): void;
  /** Lets the call with this number, counted from 1 and from now, fail once: the port promises that nothing is done then. */
  failAt(number: number): void;
}

/** Wraps every method that answers with a promise; listening is passed through. */
export function countingPort(inner: WorkbookPort): CountingPort {
  const state = { calls: [] as string[], failing: 0 };
  const wrapped = Object.fromEntries(Object.entries(inner).map(([name, member]: [string, unknown]) => {
    if (typeof member !== "function" || name.startsWith("on")) return [name, member];
    return [name, (...args: unknown[]): Promise<unknown> => {
      state.calls.push(name);
      return state.calls.length === state.failing ? Promise.reject(new Error(BUSY)) : (member as (...values: unknown[]) => Promise<unknown>)(...args);
    }];
  })) as unknown as WorkbookPort;
  return {
    port: wrapped,
    get calls() {
      return state.calls;
    },
    reset: () => { state.calls = []; state.failing = 0; },
    failAt: (number) => { state.calls = []; state.failing = number; },
  };
}

export const BUSY = "The workbook is busy.";

export interface PanelInPage {
  readonly book: Book;
  readonly counting: CountingPort;
  readonly root: HTMLElement;
  /** What nobody caught. */
  readonly faults: readonly string[];
  close(): void;
}

const GLOBALS = ["window", "document", "Node", "Element", "HTMLElement", "HTMLInputElement", "HTMLButtonElement", "HTMLSelectElement", "HTMLTextAreaElement", "SVGElement", "Event", "InputEvent", "KeyboardEvent", "MouseEvent", "CustomEvent", "sessionStorage", "localStorage", "getSelection", "getComputedStyle", "DOMParser", "XMLSerializer", "navigator", "location", "MutationObserver", "innerHeight", "innerWidth"] as const;

/** @param failAt number of the call of the very first reading that fails */
export function openPanel(tables: readonly TableContent[], failAt = 0, openBook: OpenBook = memoryBook): PanelInPage {
  const { window } = new JSDOM('<!doctype html><html lang="en"><body><main id="panel"></main></body></html>', { url: "http://localhost/", pretendToBeVisual: true });
  for (const name of GLOBALS) Object.defineProperty(globalThis, name, { value: window[name as keyof typeof window], configurable: true, writable: true });
  Object.defineProperty(globalThis, "matchMedia", { value: () => ({ matches: false, addEventListener: () => undefined, removeEventListener: () => undefined }), configurable: true });
  for (const name of ["requestAnimationFrame", "cancelAnimationFrame"] as const) Object.defineProperty(globalThis, name, { value: window[name].bind(window), configurable: true });
  for (const name of ["ResizeObserver", "IntersectionObserver"]) Object.defineProperty(globalThis, name, { value: class { observe(): void { return; } unobserve(): void { return; } disconnect(): void { return; } }, configurable: true });
  window.Element.prototype.scrollIntoView = () => undefined;
  const faults: string[] = [];
  window.addEventListener("error", ({ message }) => { faults.push(message); });
  const rejected = (reason: unknown): void => { faults.push(String(reason)); };
  process.on("unhandledRejection", rejected);
  const book = openBook(tables);
  const counting = countingPort(book.port);
  if (failAt > 0) counting.failAt(failAt);
  const root = window.document.getElementById("panel") as unknown as HTMLElement;
  const panel = mountPanel(root, counting.port);
  return { book, counting, root, faults, close: () => { panel.unmount(); process.off("unhandledRejection", rejected); window.close(); } };
}

/** Some cars of the demo, so that a panel is up in a moment: sound ones, ones on hold, and ones with open questions. */
export function fewCars(): TableContent[] {
  return demoTables.map(({ name, headings, rows }) => ({ name, sheet: name, headings, rows: name === "Cars" ? rows.filter((_, index) => [0, 12, 21, 22].includes(index)) : rows }));
}

/** Longer than the workbook gathers changes, and until nothing more is asked. */
export async function settled({ book, counting, root }: PanelInPage): Promise<void> {
  for (let quiet = 0, calls = -1, text = ""; quiet < book.quiet;) {
    await new Promise((resume) => { setTimeout(resume, PAUSE); });
    const now = root.textContent;
    quiet = calls === counting.calls.length && text === now ? quiet + PAUSE : 0;
    [calls, text] = [counting.calls.length, now];
  }
}

const PAUSE = 12;

/** In sight: neither it nor anything around it is hidden. */
export const isShown = (part: Element): boolean => part.closest("[hidden]") === null;

export function textInSight(root: HTMLElement): string {
  const copy = root.cloneNode(true) as HTMLElement;
  for (const hidden of copy.querySelectorAll("[hidden]")) hidden.remove();
  return copy.textContent;
}

/** What the panel tells as failed, in sight. */
export const toldFailures = (root: HTMLElement): string[] => [...root.querySelectorAll('[role="alert"]')].filter((one) => isShown(one) && one.textContent.trim() !== "").map((one) => one.textContent);
