/** Offers work that was not saved when the page is opened again, and never forces it. */
import { byId } from "./page-messages";
import { type KeptSession, type SessionStore } from "./session-store";

export interface OfferParts {
  readonly page: Document;
  readonly store: SessionStore;
  /** Opens the workbook and keeps it as the page's own; false when the user would rather not, throws when it cannot be shown. */
  readonly open: (session: KeptSession) => Promise<boolean>;
  readonly say: (sentence: string) => void;
}

/**
 * Offers the workbooks that earlier pages left unsaved, one after another, newest first. The page goes on meanwhile; what is
 * neither opened nor thrown away is offered again next time.
 * @returns the order number that a new session takes
 */
export async function offerSessions({ page, store, open, say }: OfferParts): Promise<number> {
  const offer = byId(page, "kept", HTMLElement);
  const left = await store.left().catch(() => []);
  const waiting = [...left];
  const showNext = (): void => {
    const [next] = waiting;
    offer.hidden = next === undefined;
    if (next) byId(page, "kept-text", HTMLElement).textContent = `${next.name} had changes that were not saved when this page was last closed (${sayWhen(next.keptAt)}).`;
  };
  const done = (session: KeptSession): void => {
    waiting.splice(0, 1);
    showNext();
    void store.remove(session.id).catch(() => undefined);
  };
  byId(page, "kept-open", HTMLElement).addEventListener("click", () => {
    const [session] = waiting;
    if (!session) return;
    open(session).then((isOpen) => { if (isOpen) done(session); }, () => { say(`${session.name} could not be opened as it was kept. It stays kept, and what was open is still here.`); });
  });
  byId(page, "kept-discard", HTMLElement).addEventListener("click", () => {
    const [session] = waiting;
    if (session) done(session);
  });
  showNext();
  return (left[0]?.order ?? 0) + 1;
}

const sayWhen = (time: number): string => new Date(time).toLocaleString([], { dateStyle: "medium", timeStyle: "short" });
