/** How far the work on all cars has come. */
import { element } from "./element";
import { sayNumber } from "./words";

export interface ProgressLine {
  readonly bar: HTMLElement;
  /** In sight until there is a first reading; after that the bar alone tells of work. */
  readonly text: HTMLElement;
  show(done: number, total: number): void;
  done(): void;
}

export function progressLine(): ProgressLine {
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
