/** Where the browser keeps unsaved work. */
import { createStore, del, entries, set } from "idb-keyval";
import { type WorkbookDocument } from "../workbook/document";

/** A workbook with changes that were not saved, as it stood when the page went away. */
export interface KeptSession {
  readonly id: string;
  /** What the page showed as the file's name. */
  readonly name: string;
  /** By the clock of the machine, to be shown; it may have been set since, so that nothing is ordered by it. */
  readonly keptAt: number;
  /** Counts up over all sessions kept here: the largest is the newest. */
  readonly order: number;
  readonly document: WorkbookDocument;
}

/** Where sessions are kept. Each call may fail: a browser may refuse, be full, or have cleared everything. */
export interface SessionStore {
  /** Sessions of pages that are gone, newest first. */
  left(): Promise<readonly KeptSession[]>;
  put(session: KeptSession): Promise<void>;
  remove(id: string): Promise<void>;
  /** Says that the page with this session is there, for as long as it is; settles only when that cannot be said. */
  claim(id: string): Promise<void>;
}

/** The browser's own database: the workbook is kept as it is, without the size limit of plain local storage. */
export function browserSessions(): SessionStore {
  // A change of WorkbookDocument that an older page could not read gets a store of its own.
  const store = createStore("plumbline", "sessions-1");
  return {
    left: async () => {
      const alive = new Set(((await navigator.locks.query()).held ?? []).map(({ name }) => name));
      const all = await entries<string, KeptSession>(store);
      return all.map(([, session]) => session).filter(({ id }) => !alive.has(lockOf(id))).sort((a, b) => b.order - a.order);
    },
    put: (session) => set(session.id, session, store),
    remove: (id) => del(id, store),
    claim: async (id) => {
      // Waits for as long as the page is there.
      await navigator.locks.request(lockOf(id), () => new Promise(() => undefined));
    },
  };
}

const lockOf = (id: string): string => `plumbline session ${id}`;
