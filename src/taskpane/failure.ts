/** What the panel says when it cannot go on: plain words, a way on, and the details for whoever mends it. */
import { element } from "./element";

export interface Failure {
  readonly error: unknown;
  /** What did not happen. */
  readonly heading: string;
  /** What stands as it was, and what to do. */
  readonly advice: string;
  readonly retry: () => void;
}

export function failureNotice({ error, heading, advice, retry }: Failure): HTMLElement {
  const details = element("pre", { class: "failure__details", tabindex: 0 }, detailsOf(error));
  const tryAgain = element("button", { type: "button", class: "button" }, "Try again");
  const copy = element("button", { type: "button", class: "button button--plain" }, "Copy the details");
  tryAgain.addEventListener("click", retry);
  copy.addEventListener("click", () => { void copyText(details, copy); });
  return element("section", { class: "notice failure", role: "alert" },
    element("h2", { class: "notice__heading" }, heading),
    element("p", {}, advice),
    element("p", { class: "failure__buttons" }, tryAgain, copy),
    element("details", {}, element("summary", {}, "Details"), details));
}

const detailsOf = (error: unknown): string => (error instanceof Error ? `${error.name}: ${error.message}\n${error.stack ?? ""}` : String(error));

/** The clipboard may be closed to a pane inside a spreadsheet; then the text is marked, ready to be copied by hand. */
async function copyText(details: HTMLElement, button: HTMLElement): Promise<void> {
  try {
    await navigator.clipboard.writeText(details.textContent);
    button.textContent = "Copied";
  } catch {
    details.closest("details")?.setAttribute("open", "");
    getSelection()?.selectAllChildren(details);
    button.textContent = "Marked: press Ctrl+C";
  }
}
