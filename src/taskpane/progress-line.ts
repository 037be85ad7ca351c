/** How far the work on all cars has come, with a way to stop it and to go on. */
import { element } from "./element";
import { sayNumber } from "./words";

export interface ProgressLine {
  /** The thin bar at the head. */
  readonly bar: HTMLElement;
  /** What is going on in words: in sight until there is a first reading, and after that when the work takes long. */
  readonly line: HTMLElement;
  show(done: number, total: number): void;
  /** The work stands still until the user goes on. */
  held(): void;
  done(): void;
}

export interface ProgressActions {
  readonly stop: () => void;
  readonly goOn: () => void;
}

/** Quicker work is over before its words are read. */
const WORTH_TELLING_MILLISECONDS = 400;

export function progressLine({ stop, goOn }: ProgressActions): ProgressLine {
  const bar = element("progress", { class: "progress__bar", "aria-label": "Cars worked out", hidden: true });
  const text = element("span", { class: "progress__text" }, "Reading the workbook …");
  const button = element("button", { type: "button", class: "button button--plain progress__button", hidden: true });
  const line = element("div", { class: "progress" }, text, button);
  const state: { held: boolean; first: boolean; since: number | undefined; done: number; total: number } = { held: false, first: true, since: undefined, done: 0, total: 0 };
  const offer = (word: string): void => {
    button.hidden = false;
    button.textContent = word;
  };
  button.addEventListener("click", () => {
    if (state.held) goOn();
    else stop();
    state.held = false;
  });
  return {
    bar, line,
    show: (done, total) => {
      state.since ??= performance.now();
      Object.assign(state, { done, total, held: false });
      Object.assign(bar, { hidden: false, max: total, value: done });
      line.hidden = !state.first && performance.now() - state.since < WORTH_TELLING_MILLISECONDS;
      text.textContent = `Working out the cars: ${sayNumber(done)} of ${sayNumber(total)} …`;
      offer("Stop");
    },
    held: () => {
      state.held = true;
      line.hidden = false;
      text.textContent = `Stopped at ${sayNumber(state.done)} of ${sayNumber(state.total)} cars. ${state.first ? "Nothing is shown before all of them are worked out." : "What is shown is from before."}`;
      offer("Go on");
    },
    done: () => {
      Object.assign(state, { first: false, since: undefined, held: false });
      for (const part of [bar, line]) part.hidden = true;
    },
  };
}
