/** A tally that may break between its parts and never inside one, so that a number stays with its word in a narrow pane. */
import { element } from "./element";

/** `24 cars: 7 on hold, 3 to decide.` is three parts; a comma between digits parts nothing. */
export const tallyParts = (text: string): readonly string[] => text.split(/(?<=[,:;]) /);

export function showTally(line: HTMLElement, text: string): void {
  line.replaceChildren(...tallyParts(text).flatMap((part, index) => [...(index === 0 ? [] : [" "]), element("span", { class: "unparted" }, part)]));
}
