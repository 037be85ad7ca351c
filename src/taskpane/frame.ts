/** What stands around the views: the name, the tabs, how the work goes on, what went wrong, and the caution. */
import { cautionNote } from "./caution";
import { element } from "./element";
import type { MessageLine } from "./message-line";
import type { ProgressLine } from "./progress-line";
import type { ViewChoice } from "./view-choice";

export interface Frame {
  readonly content: HTMLElement;
  /** Shows the views, or what there is to say instead. */
  show(instead: HTMLElement | undefined): void;
  showProblem(problem: HTMLElement | undefined): void;
}

export interface FrameParts {
  readonly choice: ViewChoice;
  readonly progress: ProgressLine;
  readonly message: MessageLine;
}

/** Tabs, views and caution stay out of sight until there is something to show, so that nothing on the page moves. */
export function frameOf({ choice, progress, message }: FrameParts): Frame {
  const name = element("h1", { class: "head__name" }, "Plumbline");
  const problem = element("div", { class: "problem" });
  const empty = element("div", { class: "view" });
  const views = element("div", { class: "views", hidden: true }, ...choice.panels);
  const caution = cautionNote();
  const content = element("section", { class: "plumbline", "aria-label": "Plumbline" },
    element("header", { class: "head" }, name, choice.strip, progress.bar), message.visible, problem, empty, views, caution, progress.line, message.spoken);
  for (const part of [choice.strip, caution]) part.hidden = true;
  return {
    content,
    show: (instead) => {
      if ((instead ?? null) !== empty.firstChild) empty.replaceChildren(...(instead ? [instead] : []));
      for (const part of [views, choice.strip]) part.hidden = instead !== undefined;
      name.classList.toggle("unseen", instead === undefined);
      caution.hidden = false;
    },
    showProblem: (shown) => {
      problem.replaceChildren(...(shown ? [shown] : []));
      caution.hidden = false;
    },
  };
}
