/** What the panel says of what was done: in sight when it failed, to screen readers when the page shows it by itself. */
import { element } from "./element";

export interface MessageLine {
  readonly visible: HTMLElement;
  readonly spoken: HTMLElement;
  /** Said to screen readers only. */
  speak(text: string): void;
  show(text: string): void;
  clear(): void;
}

export function messageLine(): MessageLine {
  const visible = element("p", { class: "message", role: "alert", hidden: true });
  const spoken = element("p", { class: "unseen", role: "status" });
  return {
    visible, spoken,
    speak: (text) => { if (spoken.textContent !== text) spoken.textContent = text; },
    show: (text) => {
      visible.textContent = text;
      visible.hidden = false;
    },
    clear: () => { visible.hidden = true; },
  };
}
