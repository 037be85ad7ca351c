/** Notes, errors and questions of the local page. */
import { type GridMessages } from "./grid/view";

export interface PageMessages extends GridMessages {
  /** Says what is being done while it is. The work begins when that is drawn, as it may hold the page up. */
  during<T>(text: string, work: () => T | Promise<T>): Promise<T>;
}

/** Notes that pass, and errors and questions that wait, in the elements of page.html. */
export function pageMessages(page: Document): PageMessages {
  const note = byId(page, "note", HTMLElement);
  const dialog = byId(page, "question", HTMLDialogElement);
  const showOne = (text: string, isQuestion: boolean): Promise<boolean> => {
    byId(page, "question-text", HTMLElement).textContent = text;
    byId(page, "question-no", HTMLElement).hidden = !isQuestion;
    dialog.returnValue = "";
    dialog.showModal();
    return new Promise((resolve) => {
      dialog.addEventListener("close", () => { resolve(dialog.returnValue === "yes"); }, { once: true });
    });
  };
  let last: Promise<unknown> = Promise.resolve();
  /** One after another: a dialog that is open cannot be opened again. */
  const wait = (text: string, isQuestion: boolean): Promise<boolean> => {
    const answer = last.then(() => showOne(text, isQuestion));
    last = answer;
    return answer;
  };
  let timer: ReturnType<typeof setTimeout> | undefined;
  const clear = (): void => { note.hidden = true; };
  const show = (text: string): void => {
    note.textContent = text;
    note.hidden = false;
    clearTimeout(timer);
  };
  return {
    during: async (text, work) => {
      show(text);
      await nextDrawing();
      return Promise.resolve().then(work).finally(clear);
    },
    note: (text) => {
      show(text);
      timer = setTimeout(clear, noteMilliseconds);
    },
    error: (text, done) => void wait(text, false).then(() => done?.()),
    ask: (text, yes, no) => void wait(text, true).then((agreed) => (agreed ? yes() : no?.())),
  };
}

const nextDrawing = (): Promise<void> => new Promise((drawn) => { requestAnimationFrame(() => { setTimeout(drawn, 0); }); });

/** The element of that kind with that id. Throws when page.html and the program disagree. */
export function byId<T extends HTMLElement>(page: Document, id: string, kind: new () => T): T {
  const element = page.getElementById(id);
  if (!(element instanceof kind)) throw new Error(`page.html has no ${kind.name} with the id ${id}.`);
  return element;
}

/** Time to read a sentence twice. */
const noteMilliseconds = 8000;
