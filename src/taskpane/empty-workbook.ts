/** What the panel says before there are cars to report on. */
import { tableSpecs } from "../catalogue/table-specs";
import { element } from "./element";

/** @param carTables names of the tables of cars, which then have no rows; none when there is no such table */
export function emptyWorkbook(carTables: readonly string[]): HTMLElement {
  const [table] = carTables;
  return element("section", { class: "empty" },
    element("h2", { class: "tally" }, table === undefined ? "No table of cars yet" : `${table} has no rows yet`),
    element("p", {}, "Plumbline reads one row for each car. It says which hard lines the car needs, what does not fit or fights another part, and how much tube all the cars take."),
    ...(table === undefined ? howToBegin() : [element("p", {}, `Type the first car under the headings of ${table}. The flags appear here as you type.`)]));
}

function howToBegin(): HTMLElement[] {
  const headings = (tableSpecs.find(({ name }) => name === "Cars")?.headings ?? []).slice(0, FIRST_HEADINGS).map(({ heading }) => heading);
  return [
    element("ol", { class: "steps" },
      element("li", {}, "On a new sheet, type these headings in one row: ", element("strong", {}, headings.join(", ")), "."),
      element("li", {}, "Type a car in the row below, select both rows and make them a table, with the first row as its headings."),
      element("li", {}, "Do the same for Platforms, Components, Ports and Lengths, with your own parts.")),
    element("p", {}, "Nothing is written into your workbook until you ask for it."),
  ];
}

/** The headings from Car to Material: enough for a first row. */
const FIRST_HEADINGS = 11;
