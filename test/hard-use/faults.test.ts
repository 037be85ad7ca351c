/** Every call of the workbook fails once, at each step of everything a user can click: found in the panel itself, so that new buttons are tried as they come. */
import { excelBook, gridBook, memoryBook, type OpenBook } from "./books";
import { BUSY, fewCars, isShown, openPanel, settled, textInSight, toldFailures, type PanelInPage } from "./panel-in-page";

import { ROWS } from "./rows";

jest.setTimeout(600_000);
const isNight = ROWS > 20_000;

let open: PanelInPage | undefined;
/** What nobody caught, in any panel of the test. */
const faults: string[] = [];
const closeLast = (): void => {
  faults.push(...(open?.faults ?? []));
  open?.close();
  open = undefined;
};
afterEach(() => {
  closeLast();
  expect(faults.splice(0)).toEqual([]);
});

async function opened(failAt = 0, book: OpenBook = memoryBook): Promise<PanelInPage> {
  closeLast();
  open = openPanel(fewCars(), failAt, book);
  await settled(open);
  return open;
}

/** A way through the panel: the names of the tabs to press one after another, and `name=value` of a choice to make there. */
type Way = readonly string[];
const tabs = (root: HTMLElement): HTMLElement[] => [...root.querySelectorAll<HTMLElement>('[role="tab"]')].filter(isShown);
const nameOf = (part: Element): string => part.textContent.trim();

async function walk(panel: PanelInPage, way: Way): Promise<void> {
  for (const name of way) {
    const tab = tabs(panel.root).find((one) => nameOf(one) === name) ?? choices(panel.root).find((one) => choiceName(one) === name);
    if (!tab) throw new Error(`There is no tab ${name} among ${tabs(panel.root).map(nameOf).join(", ")}.`);
    tab.click();
    await settled(panel);
  }
}

const choices = (root: HTMLElement): HTMLInputElement[] => [...root.querySelectorAll<HTMLInputElement>('input[type="radio"]')].filter(isShown);
const choiceName = ({ name, value }: HTMLInputElement): string => `${name}=${value}`;

/** The ways to each view, and on from there by each choice that it offers. */
async function waysWithChoices(): Promise<Way[]> {
  const ways: Way[] = [];
  for (const way of await waysOf(await opened())) {
    const panel = await opened();
    await walk(panel, way);
    ways.push(way, ...choices(panel.root).filter(({ checked }) => !checked).map((choice) => [...way, choiceName(choice)]));
  }
  return ways;
}

/** Every view that tabs lead to: those of the first strip are places, the rest stand inside them. */
async function waysOf(panel: PanelInPage): Promise<Way[]> {
  const ways: Way[] = [];
  const strip = panel.root.querySelector('[role="tablist"]');
  for (const place of tabs(panel.root).filter((tab) => strip?.contains(tab)).map(nameOf)) {
    await walk(panel, [place]);
    const inner = tabs(panel.root).filter((tab) => !strip?.contains(tab)).map(nameOf);
    ways.push(...(inner.length === 0 ? [[place]] : inner.map((view) => [place, view])));
  }
  return ways;
}

/** What makes two buttons the same kind of button: look, purpose and words, whichever car they are about. Folds of one place are of one kind whatever their words. */
const kindOf = (button: Element): string =>
  [button.className, button.closest("[class]:not(button)")?.className ?? "", Object.keys((button as HTMLElement).dataset).join(" "), button.className.includes("link") || button.localName === "summary" ? "" : nameOf(button).replaceAll(/[\d.,]+/g, "#").slice(0, 24)].join("|");

/** One button of each kind that is in sight and can be pressed, tabs left out. */
function buttons(root: HTMLElement): Map<string, HTMLElement> {
  const found = new Map<string, HTMLElement>();
  for (const button of root.querySelectorAll<HTMLElement>('button:not([role="tab"]):not([disabled]), summary')) if (isShown(button) && !found.has(kindOf(button))) found.set(kindOf(button), button);
  return found;
}

const isAlive = async (panel: PanelInPage): Promise<void> => {
  for (const tab of tabs(panel.root)) expect(nameOf(tab)).not.toBe("");
  await walk(panel, [nameOf(tabs(panel.root)[0] as HTMLElement)]);
  expect(tabs(panel.root).length).toBeGreaterThan(1);
};

test("the first reading fails at each of its calls: it is said, nothing is written, and trying again works", async () => {
  const sound = await opened();
  const calls = sound.counting.calls.length;
  const shown = textInSight(sound.root);
  expect(calls).toBeGreaterThan(10);
  for (let number = 1; number <= calls; number++) {
    const panel = await opened(number);
    const before = await panel.book.content();
    // The workbook's name only says whose choices to recall; without it the panel goes on.
    const isName = sound.counting.calls[number - 1] === "workbookName";
    expect(toldFailures(panel.root).join()).toContain(isName ? "" : BUSY);
    [...panel.root.querySelectorAll<HTMLElement>("button")].find((button) => nameOf(button) === "Try again")?.click();
    await settled(panel);
    expect(toldFailures(panel.root)).toEqual([]);
    expect(textInSight(panel.root)).toBe(shown);
    expect(await panel.book.content()).toBe(before);
  }
});

test("an edit in the sheet is read again although each call of that reading fails once", async () => {
  const edit = (panel: PanelInPage): void => { panel.book.edit("Cars", 0, "Valves", "none"); };
  const sound = await opened();
  sound.counting.reset();
  edit(sound);
  await settled(sound);
  const calls = sound.counting.calls.length;
  const shown = textInSight(sound.root);
  expect(calls).toBeGreaterThan(0);
  for (let number = 1; number <= calls; number++) {
    const panel = await opened();
    panel.counting.failAt(number);
    edit(panel);
    await settled(panel);
    expect(toldFailures(panel.root).join()).toContain(BUSY);
    [...panel.root.querySelectorAll<HTMLElement>("button")].find((button) => nameOf(button) === "Try again")?.click();
    await settled(panel);
    expect(textInSight(panel.root)).toBe(shown);
  }
});

/** What was pressed, where, and the calls it made: for the tests after. */
const pressed: { readonly way: Way; readonly kind: string; readonly calls: readonly string[] }[] = [];

test("whatever is clicked, each of its calls fails once: nothing is half done unless it is said, and doing it again works", async () => {
  const ways = await waysWithChoices();
  expect(ways.length).toBeGreaterThan(4);
  const tried = new Set<string>();
  for (const way of ways) {
    const panel = await opened();
    await walk(panel, way);
    // A choice shows more of a view, or less; what it shows again was pressed before.
    const view = way.filter((step) => !step.includes("=")).join();
    for (const kind of buttons(panel.root).keys()) {
      // By day a kind of button that stands in several views is pressed in one of them.
      const key = isNight ? view + kind : kind;
      if (!tried.has(key)) pressed.push({ way, kind, calls: await tryButton(way, kind) });
      tried.add(key);
    }
  }
});

async function tryButton(way: Way, kind: string, book: OpenBook = memoryBook, isToFail: (call: string) => boolean = () => true): Promise<readonly string[]> {
  const ready = async (): Promise<PanelInPage> => {
    const panel = await opened(0, book);
    await walk(panel, way);
    panel.counting.reset();
    return panel;
  };
  const press = async (panel: PanelInPage): Promise<void> => {
    const button = buttons(panel.root).get(kind);
    if (!button) throw new Error(`${way.join(", ")}: no ${kind}`);
    button.click();
    await settled(panel);
  };
  const sound = await ready();
  const before = await sound.book.content();
  await press(sound);
  const calls = [...sound.counting.calls];
  const after = await sound.book.content();
  await isAlive(sound);
  for (let number = 1; number <= calls.length; number++) {
    const call = calls[number - 1] ?? "";
    // By day one call of a kind fails at its first and, where it writes, at its last: a reading asks for fifteen tables one like the other.
    const isTried = isNight || number === calls.indexOf(call) + 1 || (isAct(call) && number === calls.lastIndexOf(call) + 1);
    if (!isTried || !isToFail(call)) continue;
    const panel = await ready();
    panel.counting.failAt(number);
    await press(panel);
    const at = { way, kind, call: `${String(number)} ${call}` };
    const now = await panel.book.content();
    const told = toldFailures(panel.root);
    expect({ ...at, isTold: told.some((text) => text.includes(BUSY)) }).toEqual({ ...at, isTold: true });
    expect({ ...at, isWhole: now === before || now === after }).toEqual({ ...at, isWhole: true });
    if (now === before && after !== before) {
      await press(panel);
      expect({ ...at, isDone: (await panel.book.content()) === after }).toEqual({ ...at, isDone: true });
    }
    await isAlive(panel);
  }
  return calls;
}

test("buttons that read and write the workbook were among those pressed", () => {
  const calls = new Set(pressed.flatMap(({ calls: made }) => made));
  expect(pressed.length).toBeGreaterThan(10);
  expect([...calls]).toEqual(expect.arrayContaining(["selectTableRow", "writeTableCell"]));
});

/** The call by which a press changes or shows the workbook, where it does. */
const actOf = (calls: readonly string[]): string | undefined => calls.find(isAct);
const isAct = (call: string): boolean => /^(write|append|insert|selectTableRow)/.test(call);

/** One button for each such call, the one that makes fewest; at night every button that makes one. */
function buttonsToRepeat(): typeof pressed {
  const acting = pressed.filter(({ calls }) => actOf(calls) !== undefined).sort((a, b) => a.calls.length - b.calls.length);
  return isNight ? acting : acting.filter(({ calls }, index) => acting.findIndex((one) => actOf(one.calls) === actOf(calls)) === index);
}

const otherBooks: readonly (readonly [string, OpenBook])[] = isNight ? [["Excel", excelBook], ["the grid of the page", gridBook]] : [["Excel", excelBook]];
test.each(otherBooks)("over %s the same buttons fail, are told and work again", async (_, book) => {
  const repeated = buttonsToRepeat();
  expect(repeated.length).toBeGreaterThan(2);
  for (const { way, kind, calls } of repeated) expect({ way, kind, calls: await tryButton(way, kind, book, isNight ? undefined : isAct) }).toEqual({ way, kind, calls });
});

test("two edits while it works: the last word stands, and the panel says so", async () => {
  const panel = await opened();
  panel.book.edit("Cars", 0, "Valves", "?");
  panel.book.edit("Cars", 0, "Valves", "none");
  await new Promise((resume) => { setTimeout(resume, 22); });
  panel.book.edit("Cars", 1, "Valves", "?");
  await settled(panel);
  const shown = textInSight(panel.root);
  const fresh = await opened();
  fresh.book.edit("Cars", 1, "Valves", "?");
  fresh.book.edit("Cars", 0, "Valves", "none");
  await settled(fresh);
  expect(shown).toBe(textInSight(fresh.root));
});

test("a panel closed in the middle of a click asks and says nothing more", async () => {
  const panel = await opened();
  await walk(panel, (await waysOf(panel)).find((way) => way.includes("Questions")) ?? []);
  panel.counting.reset();
  panel.root.querySelector<HTMLElement>("[data-answer]")?.click();
  const content = panel.root.querySelector(".plumbline");
  panel.close();
  await new Promise((resume) => { setTimeout(resume, 100); });
  expect(panel.counting.calls.filter((name) => name !== "writeTableCell")).toEqual([]);
  expect(content?.isConnected).toBe(false);
});

test("a clock set back, on past midnight, or before the first day a sheet knows stops nothing", async () => {
  const panel = await opened();
  // By day the two views that reckon with the day.
  const ways = (await waysOf(panel)).filter((way) => isNight || /Stock|Quote/.test(way.join()));
  jest.useFakeTimers({ doNotFake: [...TIMERS] });
  try {
    for (const way of ways) {
      await walk(panel, way);
      for (const day of ["2025-11-20T12:00", "2026-11-21T00:01", "1899-12-29T12:00", "2026-11-20T23:59"]) {
        jest.setSystemTime(new Date(day));
        panel.book.edit("Cars", 0, "Notes", `${way.join()} on ${day}`);
        await settled(panel);
        expect({ way, day, told: toldFailures(panel.root) }).toEqual({ way, day, told: [] });
        expect(textInSight(panel.root)).not.toMatch(/NaN|Invalid|undefined/);
      }
    }
    expect(ways.length).toBeGreaterThan(1);
    await isAlive(panel);
  } finally {
    jest.useRealTimers();
  }
});

/** All but the days: the page waits and draws as ever. */
const TIMERS = ["hrtime", "nextTick", "performance", "queueMicrotask", "requestAnimationFrame", "cancelAnimationFrame", "requestIdleCallback", "cancelIdleCallback", "setImmediate", "clearImmediate", "setInterval", "clearInterval", "setTimeout", "clearTimeout"] as const;

test.each(["denied", "full"])("a browser whose storage is %s takes nothing from the panel", async (kind) => {
  await opened();
  const refuse = (): never => { throw new DOMException(kind, kind === "full" ? "QuotaExceededError" : "SecurityError"); };
  const storage = { getItem: kind === "full" ? () => null : refuse, setItem: refuse, removeItem: refuse, key: refuse, clear: refuse, length: 0 };
  const panel = await opened();
  for (const name of ["sessionStorage", "localStorage"]) Object.defineProperty(globalThis, name, kind === "denied" ? { get: refuse, configurable: true } : { value: storage, configurable: true });
  for (const way of await waysOf(panel)) await walk(panel, way);
  expect(toldFailures(panel.root)).toEqual([]);
  await isAlive(panel);
});
