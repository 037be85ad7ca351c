import { JSDOM } from "jsdom";
import { keepSession } from "../../src/embedded/session-keeper";
import { offerSessions } from "../../src/embedded/session-offer";
import { type KeptSession, type SessionStore } from "../../src/embedded/session-store";
import { type WorkbookDocument } from "../../src/workbook/document";

const workbook = (text: string): WorkbookDocument => ({ sheets: [{ name: "S", cells: new Map([["A1", { value: text }]]), tables: [] }] });
const textOf = ({ document }: Pick<KeptSession, "document">): unknown => document.sheets[0]?.cells.get("A1")?.value;

/** A store in memory that fails as long as it is told to. */
function storeOf(left: readonly KeptSession[] = []) {
  const sessions = new Map(left.map((session) => [session.id, session]));
  const state = { fails: undefined as Error | undefined, writes: 0, hold: undefined as Promise<void> | undefined };
  const attempt = async (work: () => void): Promise<void> => {
    state.writes++;
    await state.hold;
    if (state.fails) throw state.fails;
    work();
  };
  const store: SessionStore = {
    left: () => (state.fails ? Promise.reject(state.fails) : Promise.resolve([...sessions.values()].sort((a, b) => b.order - a.order))),
    put: (session) => attempt(() => sessions.set(session.id, session)),
    remove: (id) => attempt(() => sessions.delete(id)),
    claim: () => Promise.resolve(),
  };
  return { store, sessions, state };
}

function keeping(given = storeOf()) {
  const book = { text: "first" };
  const said: string[] = [];
  let clock = Date.UTC(2020, 1, 29);
  const keeper = keepSession({ store: given.store, id: "me", firstOrder: 5, snapshot: () => ({ name: "A.xlsx", document: workbook(book.text) }), now: () => clock, failed: (sentence) => said.push(sentence) });
  return { ...given, book, said, keeper, setClock: (time: number) => { clock = time; } };
}

describe("keeping", () => {
  beforeEach(() => { jest.useFakeTimers(); });
  afterEach(() => { jest.useRealTimers(); });

  test("an edit is kept once it has been quiet, several edits once, as the workbook stands then", async () => {
    const { keeper, book, sessions, state } = keeping();
    keeper.changed();
    await jest.advanceTimersByTimeAsync(1000);
    book.text = "second";
    keeper.changed();
    await jest.advanceTimersByTimeAsync(1400);
    expect(sessions.size).toBe(0);
    await jest.advanceTimersByTimeAsync(200);
    expect([...sessions.values()].map(textOf)).toEqual(["second"]);
    expect(state.writes).toBe(1);
  });

  test("a page that is about to go keeps what waits, and nothing when nothing does", async () => {
    const { keeper, sessions, state } = keeping();
    await keeper.keepNow();
    expect(state.writes).toBe(0);
    keeper.changed();
    await keeper.keepNow();
    expect(sessions.get("me")).toMatchObject({ name: "A.xlsx", order: 5 });
  });

  test("what is saved to a file is kept no longer, even when an edit waited", async () => {
    const { keeper, sessions } = keeping();
    keeper.changed();
    await keeper.keepNow();
    keeper.changed();
    keeper.saved();
    await jest.advanceTimersByTimeAsync(60_000);
    expect(sessions.size).toBe(0);
  });

  test("an edit while it is being kept is kept after it, and a save while it is being kept takes it away", async () => {
    const { keeper, book, sessions, state } = keeping();
    let go: () => void = () => undefined;
    state.hold = new Promise((done) => { go = done; });
    keeper.changed();
    const first = keeper.keepNow();
    book.text = "second";
    keeper.changed();
    const second = keeper.keepNow();
    go();
    await Promise.all([first, second]);
    expect([...sessions.values()].map(textOf)).toEqual(["second"]);
    state.hold = new Promise((done) => { go = done; });
    keeper.changed();
    const third = keeper.keepNow();
    keeper.saved();
    go();
    await third;
    expect(sessions.size).toBe(0);
  });

  test.each([["QuotaExceededError", /no room left/], ["SecurityError", /keeps nothing/]])("%s is said once, and keeping goes on as soon as it can", async (name, sentence) => {
    const { keeper, said, sessions, state } = keeping();
    state.fails = Object.assign(new Error("no"), { name });
    for (let edit = 0; edit < 3; edit++) {
      keeper.changed();
      await keeper.keepNow();
    }
    expect(said).toEqual([expect.stringMatching(sentence)]);
    state.fails = undefined;
    keeper.changed();
    await keeper.keepNow();
    expect(sessions.size).toBe(1);
  });

  test("a clock set back orders nothing", async () => {
    const { keeper, sessions, setClock } = keeping();
    keeper.changed();
    await keeper.keepNow();
    setClock(0);
    keeper.changed();
    await keeper.keepNow();
    expect(sessions.get("me")).toMatchObject({ order: 6, keptAt: 0 });
  });
});

describe("offering", () => {
  const session = (id: string, order: number): KeptSession => ({ id, order, name: `${id}.xlsx`, keptAt: 0, document: workbook(id) });

  /** Settles what the clicks began. */
  const settle = (): Promise<void> => new Promise((done) => { setTimeout(done, 0); });

  async function offering(given: ReturnType<typeof storeOf>, open: (session: KeptSession) => Promise<boolean>) {
    const { window } = new JSDOM('<section id="kept" hidden><p id="kept-text"></p><button id="kept-open"></button><button id="kept-discard"></button></section>');
    Object.assign(globalThis, { HTMLElement: window.HTMLElement });
    const said: string[] = [];
    const order = await offerSessions({ page: window.document, store: given.store, open, say: (sentence) => said.push(sentence) });
    const element = (id: string): HTMLElement => window.document.getElementById(id) as unknown as HTMLElement;
    return { order, said, shown: () => (element("kept").hidden ? "" : element("kept-text").textContent), click: async (id: string) => { element(id).click(); await settle(); } };
  }

  test("nothing left is nothing offered, and so is a store that cannot be read", async () => {
    const given = storeOf();
    expect((await offering(given, () => Promise.resolve(true))).shown()).toBe("");
    given.state.fails = new Error("denied");
    const { shown, order } = await offering(given, () => Promise.resolve(true));
    expect([shown(), order]).toEqual(["", 1]);
  });

  test("the newest first, and the next when that is opened or thrown away", async () => {
    const given = storeOf([session("old", 1), session("new", 7)]);
    const opened: string[] = [];
    const { shown, click, order } = await offering(given, ({ id }) => Promise.resolve(opened.push(id) > 0));
    expect(order).toBe(8);
    expect(shown()).toMatch(/^new\.xlsx had changes that were not saved/);
    await click("kept-open");
    expect([opened, [...given.sessions.keys()]]).toEqual([["new"], ["old"]]);
    expect(shown()).toMatch(/^old\.xlsx/);
    await click("kept-discard");
    expect([shown(), given.sessions.size]).toEqual(["", 0]);
  });

  test("one that the user would rather not open, or that cannot be shown, stays", async () => {
    const given = storeOf([session("a", 1)]);
    const answers = [Promise.resolve(false), Promise.reject(new Error("broken"))];
    const { shown, click, said } = await offering(given, () => answers.shift() ?? Promise.resolve(true));
    await click("kept-open");
    expect([shown(), said]).toEqual([expect.stringMatching(/^a\.xlsx/), []]);
    await click("kept-open");
    expect([shown(), said, given.sessions.size]).toEqual([expect.stringMatching(/^a\.xlsx/), [expect.stringMatching(/stays kept/)], 1]);
  });
});
