/** What the panel says while there are no cars: what it does, and two ways to begin. Nothing is written before a click. */
import type { WorkbookReading } from "../../workbook/workbook-reports";
import { element } from "../element";
import type { ViewActions } from "../view";
import { todayHere } from "../today";
import { setUpForm } from "./set-up-form";

export interface FirstRun {
  readonly content: HTMLElement;
  show(reading: WorkbookReading): void;
}

/** @param openDemo how the host opens the demo in place of the workbook; left out, its tables come into this workbook as new sheets */
export function firstRun(actions: ViewActions, openDemo?: () => void): FirstRun {
  const heading = element("h2", { class: "tally" });
  const next = element("p", {});
  const form = setUpForm(actions);
  const demo = demoOffer(actions, openDemo);
  const content = element("section", { class: "empty" },
    heading,
    element("p", {}, "Plumbline reads one row for each car. It says which hard lines the car needs, what does not fit or fights another part, and how much tube all the cars take."),
    next, form.content, demo);
  return {
    content,
    show: ({ carTables: [table], tables }) => {
      heading.textContent = table === undefined ? "No table of cars yet" : `${table} has no rows yet`;
      next.textContent = table === undefined ? "" : `Type the first car under the headings of ${table}. The flags appear here as you type. A part or a platform that the other tables lack is flagged too, until you add it there.`;
      next.hidden = table === undefined;
      form.show(tables);
      demo.hidden = tables.length > 0;
    },
  };
}

function demoOffer({ inWorkbook }: ViewActions, openDemo: (() => void) | undefined): HTMLElement {
  const button = element("button", { type: "button", class: "button button--plain" }, "Open the demo");
  button.addEventListener("click", () => {
    if (openDemo) openDemo();
    else void inWorkbook("The demo was not written.", async (port) => {
      const { demoParts } = await import(/* webpackChunkName: "set-up" */ "../../workbook/demo-parts");
      await port.writeTables(demoParts(todayHere(), await port.sheetNames()));
    });
  });
  return element("section", { class: "offer" },
    element("h3", { class: "offer__heading" }, "Or look around first"),
    element("p", {}, `An invented shop with its cars, parts and prices${openDemo ? ", opened in place of this workbook" : ", each table on a new sheet of its own, and sheets with the answers"}.`),
    element("p", {}, button));
}
