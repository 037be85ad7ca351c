/** Keeps unsaved work of the local page a moment after each edit. */
import { type KeptSession, type SessionStore } from "./session-store";

export interface KeeperOptions {
  readonly store: SessionStore;
  readonly id: string;
  /** The order number after those already there. */
  readonly firstOrder: number;
  /** The workbook as it stands. */
  readonly snapshot: () => Pick<KeptSession, "name" | "document">;
  readonly now: () => number;
  /** Told once when nothing can be kept, and not again until something could. */
  readonly failed: (sentence: string) => void;
}

export interface SessionKeeper {
  /** The workbook was edited: it is kept once it has been quiet for a moment. */
  changed(): void;
  /** Keeps at once what waits, as for a page that is about to go; settles when that is done, or could not be. */
  keepNow(): Promise<void>;
  /** Nothing is unsaved any more. */
  saved(): void;
}

/** Long enough not to work between two keystrokes. */
const QUIET = 1500;
/** Keeping a large workbook takes a while; it may take up a twentieth of the time at most. */
const SHARE = 20;

/** Keeps one page's workbook, one writing after another, always as it stands when its turn comes. */
export function keepSession(options: KeeperOptions): SessionKeeper {
  const writer = writerOf(options);
  let timer: ReturnType<typeof setTimeout> | undefined;
  const stopWaiting = (): boolean => {
    const isWaiting = timer !== undefined;
    clearTimeout(timer);
    timer = undefined;
    return isWaiting;
  };
  return {
    changed: () => {
      stopWaiting();
      timer = setTimeout(() => { if (stopWaiting()) void writer.want("keep"); }, writer.quiet());
    },
    keepNow: () => writer.want(stopWaiting() ? "keep" : "nothing"),
    saved: () => {
      stopWaiting();
      void writer.want("remove");
    },
  };
}

interface Writer {
  /** Settles when everything wanted so far is done, or could not be. */
  want(wanted: "nothing" | "keep" | "remove"): Promise<void>;
  /** How long to let edits settle [ms]. */
  quiet(): number;
}

function writerOf({ store, id, firstOrder, snapshot, now, failed }: KeeperOptions): Writer {
  const state = { wanted: "nothing" as "nothing" | "keep" | "remove", order: firstOrder, quiet: QUIET, told: false };
  let working: Promise<void> | undefined;
  const keep = async (): Promise<void> => {
    const start = performance.now();
    await store.put({ id, keptAt: now(), order: state.order++, ...snapshot() });
    state.quiet = Math.max(QUIET, (performance.now() - start) * SHARE);
    state.told = false;
  };
  const work = async (): Promise<void> => {
    while (state.wanted !== "nothing") {
      const { wanted } = state;
      state.wanted = "nothing";
      try {
        await (wanted === "keep" ? keep() : store.remove(id));
      } catch (problem) {
        // What cannot be removed is offered again, and thrown away then.
        if (wanted === "keep" && !state.told) failed(sayNotKept(problem));
        state.told ||= wanted === "keep";
      }
    }
  };
  return {
    quiet: () => state.quiet,
    want: (wanted) => {
      if (wanted !== "nothing") state.wanted = wanted;
      working ??= work().finally(() => { working = undefined; });
      return working;
    },
  };
}

function sayNotKept(problem: unknown): string {
  const isFull = problem instanceof Error && problem.name === "QuotaExceededError";
  return `${isFull ? "The browser has no room left for this page" : "The browser keeps nothing for this page"}: changes will be lost when it is closed or reloaded. Save the workbook to a file.`;
}
