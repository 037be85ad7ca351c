/** What keeps the tables from being read in full, said on top of the flags. */
import { tableErrorSayer, type SayRow, type TableError } from "../catalogue/table-error";
import type { WorkbookReading } from "../workbook/workbook-reports";
import { element } from "./element";
import type { KeyedChild } from "./keyed-children";
import type { ViewActions } from "./view";
import { count, sayNumber } from "./words";

/** More sentences than this help nobody; the same cause is usually behind many of them. */
const MOST_SENTENCES = 12;

export function noticesOf({ tableErrors, cars, sayRow }: WorkbookReading, { selectRow }: ViewActions): readonly KeyedChild[] {
  const failed = cars.filter(({ failure }) => failure !== undefined);
  return [
    ...noticeOf("tables", tablesHeading(tableErrors.length), tableErrors.map((error) => errorLine(error, sayRow, selectRow))),
    ...noticeOf("failures", `${count(failed.length, "car")} could not be worked out`, failed.map(({ table, row, name, failure }) => ({
      text: `${name}: a fault of Plumbline stopped the work on this car. The other cars are not touched by it. Send this to whoever looks after Plumbline: ${sayFailure(failure)}`,
      jump: () => { selectRow(table, row); },
    }))),
  ];
}

interface NoticeLine {
  readonly text: string;
  /** Undefined when there is no row to go to. */
  readonly jump: (() => void) | undefined;
}

const tablesHeading = (errors: number): string => (errors === 1 ? "One place in the tables cannot be used" : `${sayNumber(errors)} places in the tables cannot be used`);

function errorLine(error: TableError, sayRow: SayRow, selectRow: ViewActions["selectRow"]): NoticeLine {
  const { table, row } = error;
  return { text: tableErrorSayer(sayRow)(error), jump: row === undefined ? undefined : () => { selectRow(table, row - 1); } };
}

const sayFailure = (failure: unknown): string => (failure instanceof Error ? failure.message : String(failure));

function noticeOf(key: string, heading: string, lines: readonly NoticeLine[]): KeyedChild[] {
  if (lines.length === 0) return [];
  return [{ key, content: JSON.stringify([heading, lines.map(({ text }) => text)]), make: () => draw(heading, lines) }];
}

function draw(heading: string, lines: readonly NoticeLine[]): HTMLElement {
  const more = lines.length - MOST_SENTENCES;
  return element("section", { class: "notice" },
    element("h3", { class: "notice__heading" }, heading),
    element("ul", { class: "notice__lines" }, ...lines.slice(0, MOST_SENTENCES).map(drawLine)),
    more > 0 ? element("p", { class: "notice__more" }, `and ${sayNumber(more)} more`) : undefined);
}

function drawLine({ text, jump }: NoticeLine): HTMLElement {
  if (!jump) return element("li", {}, text);
  const button = element("button", { type: "button", class: "link" }, "Show the row");
  button.addEventListener("click", jump);
  return element("li", {}, `${text} `, button);
}
