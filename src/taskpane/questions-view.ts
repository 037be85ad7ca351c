/** The Questions view: a script for the phone. All open questions in sight, best first, each with its reason and what each answer decides. */
import type { RankedQuestion } from "../core/ask";
import type { CellValue, TablePlace } from "../workbook/port";
import type { CarLine, WorkbookReading } from "../workbook/workbook-reports";
import { rowKey } from "./car-card";
import { carBar } from "./car-bar";
import { worstFirst } from "./car-list";
import { element } from "./element";
import { keyedChildren, type KeyedChild } from "./keyed-children";
import { twoWayChoice } from "./two-way-choice";
import type { View, ViewActions } from "./view";
import { count } from "./words";

/** Calls drawn at once when all cars are asked about. */
const CALLS_AT_ONCE = 50;

export function questionsView(actions: ViewActions): View {
  const state: { reading: WorkbookReading | undefined } = { reading: undefined };
  const bar = carBar(actions);
  const [summary, calls, list, more] = [element("p", { class: "questions__summary" }), element("p", { class: "questions__summary" }), element("div", { class: "calls" }), element("p", { class: "questions__summary", hidden: true })];
  const parts = keyedChildren(list);
  const draw = (): void => {
    if (!state.reading) return;
    const line = bar.show(state.reading);
    const waiting = callsOf(state.reading.cars);
    const all = scope.isSecond();
    const shown = all ? waiting.slice(0, CALLS_AT_ONCE) : line ? [line] : [];
    bar.content.hidden = all;
    summary.textContent = all ? `${count(waiting.reduce((sum, one) => sum + questionsOf(one).length, 0), "open question")} on ${count(waiting.length, "car")}.` : sayOpen(line);
    more.hidden = !all || waiting.length <= CALLS_AT_ONCE;
    more.textContent = `and ${count(waiting.length - CALLS_AT_ONCE, "car")} more, when these are answered`;
    parts.update(shown.map((one) => callOf(one, all)));
  };
  const scope = twoWayChoice("question-scope", "Ask about", [{ value: "one", text: "One car" }, { value: "all", text: "All cars" }]);
  scope.content.addEventListener("input", draw);
  const undo = undoLine(actions);
  list.addEventListener("click", ({ target }) => {
    const chip = target instanceof Element ? target.closest<HTMLElement>("[data-answer]") : null;
    const asked = chip?.closest<HTMLElement>(".call")?.dataset["car"];
    const answered = state.reading?.cars.find(({ table, row }) => rowKey(table, row) === asked);
    if (chip && answered) {
      void undo.write({ table: answered.table, row: answered.row, column: chip.dataset["column"] ?? "" }, chip.dataset["answer"] ?? "", answered.name);
      return;
    }
    const button = target instanceof Element ? target.closest<HTMLElement>("button") : null;
    const call = button?.closest<HTMLElement>(".call");
    const line = state.reading?.cars.find(({ table, row }) => rowKey(table, row) === call?.dataset["car"]);
    if (!line) return;
    actions.chooseCar(line);
    actions.selectRow(line.table, line.row, button?.dataset["column"]);
  });
  return { id: "questions", name: "Questions", content: element("div", { class: "questions-view" }, scope.content, bar.content, summary, undo.content, calls, list, more), show: (reading) => { state.reading = reading; draw(); } };
}

interface UndoLine {
  readonly content: HTMLElement;
  write(place: TablePlace, answer: string, car: string): Promise<void>;
}

/** Writes an answer into the car's row and offers to take the last one back. */
function undoLine({ writeCell }: ViewActions): UndoLine {
  const said = element("span", {});
  const button = element("button", { type: "button", class: "button" }, "Take it back");
  const content = element("p", { class: "undo-answer", role: "status", hidden: true }, said, button);
  let last: { readonly place: TablePlace; readonly before: CellValue } | undefined;
  button.addEventListener("click", () => {
    if (!last) return;
    const { place, before } = last;
    void writeCell(place, before).then((held) => { if (held !== undefined) { last = undefined; content.hidden = true; } });
  });
  return {
    content,
    write: async (place, answer, car) => {
      const before = await writeCell(place, answer);
      if (before === undefined) return;
      last = { place, before };
      said.textContent = `${place.column} of ${car} is now ${answer}.`;
      content.hidden = false;
    },
  };
}

const questionsOf = ({ report }: CarLine): readonly RankedQuestion[] => report?.questions ?? [];

/** Cars with something to ask: first those whose lines wait for an answer, then those whose answer tells most, then worst first. */
export function callsOf(cars: readonly CarLine[]): readonly CarLine[] {
  const rank = (line: CarLine): readonly [number, number] => [questionsOf(line).some(({ blocks }) => blocks) ? 0 : 1, -Math.max(0, ...questionsOf(line).map(({ bits }) => bits))];
  const asked = worstFirst(cars).filter((line) => questionsOf(line).length > 0).map((line) => ({ line, rank: rank(line) }));
  return asked.sort((a, b) => a.rank[0] - b.rank[0] || a.rank[1] - b.rank[1]).map(({ line }) => line);
}

function sayOpen(line: CarLine | undefined): string {
  if (!line?.report) return line ? "This row could not be worked out, so there is nothing to ask yet. See its flags." : "";
  const questions = line.report.questions.length;
  return questions === 0 ? "Nothing is open on this car." : `${count(questions, "open question")}, the one that tells most first. Click an answer, or type it into the sheet, and the list follows.`;
}

function callOf(line: CarLine, named: boolean): KeyedChild {
  const questions = questionsOf(line);
  return { key: rowKey(line.table, line.row), content: JSON.stringify([line.sheetRow, line.name, line.customer, named, questions]), make: () => drawCall(line, questions, named) };
}

function drawCall({ table, row, sheetRow, name, customer }: CarLine, questions: readonly RankedQuestion[], named: boolean): HTMLElement {
  const heading = element("h2", { class: "call__name" }, element("button", { type: "button", class: "link", title: `Select row ${sheetRow} of ${table} in the sheet` }, name), customer === "" ? undefined : ` ${customer}`);
  return element("section", { class: "call", "data-car": rowKey(table, row), "aria-label": `Questions about ${name}` },
    named ? heading : undefined,
    element("ol", { class: "questions" }, ...questions.map(drawQuestion)));
}

/** A line of the script: what to say, why, what may be answered, and where the answer goes. */
function drawQuestion(question: RankedQuestion): HTMLElement {
  const { ask, why, answers, table, column, subject, blocks } = question;
  return element("li", { class: "question" },
    element("p", { class: "question__ask" }, ask),
    element("p", { class: "question__why" }, element("span", { class: "question__label" }, "Because"), ` ${why}.`, blocks ? element("span", { class: "question__blocks" }, " Lines wait for it.") : undefined),
    answers.length === 0 ? undefined : element("ul", { class: "answers", "aria-label": "Possible answers" }, ...answers.map((one) => drawAnswer(question, one))),
    element("p", { class: "question__where" }, element("button", { type: "button", class: "link", "data-column": table === "Cars" ? column : undefined }, table === "Cars" ? "Show the cell" : "Show the row"), ` The answer goes into ${table}, column ${column}${table === "Cars" ? "" : ` (${subject})`}.`, table === "Cars" && column === "Valves" ? " Tees and switches that are on the car come behind the valves, split by a semicolon." : undefined));
}

/** An answer that settles only itself says no more. */
const sayDecides = (answer: string, decides: string): string => (decides === answer ? "" : decides);

function drawAnswer(question: RankedQuestion, { answer, leaves, decides }: RankedQuestion["answers"][number]): HTMLElement {
  const text = [element("span", { class: "answer__text" }, answer), element("span", { class: "answer__decides" }, sayDecides(answer, decides || leaves.join(" or ")))];
  if (!isCellAnswer(question, answer)) return element("li", { class: "answer" }, ...text);
  return element("li", {}, element("button", { type: "button", class: "answer", "data-answer": answer, "data-column": question.column, title: `Write ${answer} into ${question.column}` }, ...text));
}

/** Answers that a cell of the car's row can hold as they are; a stretch of years or a kind of brake only narrows it down. */
const isCellAnswer = ({ table, column }: RankedQuestion, answer: string): boolean =>
  table === "Cars" && (column === "Year" ? /^\d{4}$/.test(answer) : !(column.endsWith("brake") && (answer === "disc" || answer === "drum")));
