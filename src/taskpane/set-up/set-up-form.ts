/** The offer to make the tables that a workbook lacks, and the sheets that show the answers, each on a new sheet of its own. */
import { KEY_SHEET, missingAnswers, setUpGroups, type SetUpGroup } from "../../workbook/set-up-groups";
import { element } from "../element";
import { localeHere } from "../locale";
import { todayHere } from "../today";
import { twoWayChoice } from "../two-way-choice";
import type { ViewActions } from "../view";
import { count } from "../words";
import { unitsOffered } from "./units-here";

export interface SetUpForm {
  readonly content: HTMLElement;
  /** @param tables names of our tables that are there; nothing is offered when none is missing */
  show(tables: readonly string[]): void;
}

export function setUpForm({ inWorkbook, sheetNames }: ViewActions): SetUpForm {
  const groups = setUpGroups.map(groupChoice);
  const answers = answersChoice();
  const units = unitsChoice();
  const samples = element("input", { type: "checkbox", id: "set-up-samples" });
  const sampleLine = element("div", { class: "offer__choice" }, samples, element("label", { for: "set-up-samples" }, "With one invented car and its parts as a sample (in inches)"));
  const [heading, promise, button] = [element("h3", { class: "offer__heading" }), element("p", {}), element("button", { type: "button", class: "button" })];
  const choices = element("fieldset", { class: "offer__groups" }, element("legend", { class: "unseen" }, "Sheets to make"), ...groups.map((group) => group.content), answers.content);
  const content = element("section", { class: "offer" }, heading, promise, choices, units.content, sampleLine, element("p", {}, button));
  const there: There = { tables: [], sheets: [] };
  const wanted = (): string[] => groups.flatMap((group) => group.wanted());
  const wish = () => ({ tables: wanted(), units: units.chosen(), samples: samples.checked, answers: answers.isWanted(), today: todayHere() }) as const;
  const update = (): void => {
    const missing = groups.reduce((sum, group) => sum + group.show(there.tables), 0);
    const isAnswerMissing = answers.show([...there.tables, ...wanted()], there.sheets);
    content.hidden = missing === 0 && !isAnswerMissing;
    button.disabled = wanted().length === 0 && !answers.isWanted();
    units.content.hidden = samples.checked || missing === 0;
    heading.textContent = sayOffer(there.tables.length > 0, missing);
  };
  content.addEventListener("input", update);
  button.addEventListener("click", () => {
    void inWorkbook("Nothing was made.", async (port) => {
      const { setUpWorkbook } = await import(/* webpackChunkName: "set-up" */ "../../workbook/set-up");
      await setUpWorkbook(port, wish());
    });
  });
  return {
    content,
    show: (tables) => {
      const begun = (there.tables = tables).length > 0;
      sampleLine.hidden = begun;
      samples.checked &&= !begun;
      promise.textContent = sayPromise(begun);
      button.textContent = begun ? "Add what is chosen" : "Set up this workbook";
      update();
      void sheetNames().then((sheets) => { there.sheets = sheets; update(); });
    },
  };
}

interface There {
  tables: readonly string[];
  sheets: readonly string[];
}

const US = { value: "us", text: "Inches, psi" } as const;
const METRIC = { value: "metric", text: "mm, bar" } as const;

/** Only the order of the two is the region's; what is chosen is the reader's. */
function unitsChoice(): { readonly content: HTMLElement; readonly chosen: () => "us" | "metric" } {
  const ways = unitsOffered(localeHere()) === "metric" ? ([METRIC, US] as const) : ([US, METRIC] as const);
  const { content, isSecond } = twoWayChoice("set-up-units", "Units of the headings", ways);
  return { content, chosen: () => ways[isSecond() ? 1 : 0].value };
}

const sayOffer = (begun: boolean, missing: number): string =>
  !begun ? "Set up this workbook" : missing === 0 ? "Sheets with the answers are not in this workbook" : `${count(missing, "table")} of Plumbline ${missing === 1 ? "is" : "are"} not in this workbook`;

const sayPromise = (begun: boolean): string =>
  `Each table comes with its headings and lists to choose from, on a new sheet of its own. None of your cells is touched${begun ? `; only the formula in ${KEY_SHEET}!B2, if it is there, takes in the new tables` : ""}.`;

interface AnswersChoice {
  readonly content: HTMLElement;
  readonly isWanted: () => boolean;
  /** @returns whether one of them is missing */
  show(tables: readonly string[], sheets: readonly string[]): boolean;
}

function answersChoice(): AnswersChoice {
  const box = element("input", { type: "checkbox", id: "set-up-answers", checked: true, "aria-describedby": "set-up-answers-sheets" });
  const list = element("p", { class: "offer__tables", id: "set-up-answers-sheets" });
  const content = element("div", { class: "offer__choice" }, box, element("div", {}, element("label", { for: "set-up-answers" }, "Sheets with the answers"), list));
  return {
    content,
    isWanted: () => box.checked && !content.hidden,
    show: (tables, sheets) => {
      const names = missingAnswers(tables, sheets);
      const isKeyThere = sheets.some((name) => name.toLowerCase() === KEY_SHEET.toLowerCase());
      list.textContent = [...names, ...(isKeyThere ? [] : [KEY_SHEET])].join(", ");
      content.hidden = names.length === 0 && (isKeyThere || tables.length === 0);
      return !content.hidden;
    },
  };
}

interface GroupChoice {
  readonly content: HTMLElement;
  readonly wanted: () => readonly string[];
  /** @returns how many of the group's tables are missing */
  show(tables: readonly string[]): number;
}

function groupChoice({ id, name, tables }: SetUpGroup): GroupChoice {
  const box = element("input", { type: "checkbox", id: `set-up-${id}`, checked: id !== "found", "aria-describedby": `set-up-${id}-tables` });
  const list = element("p", { class: "offer__tables", id: `set-up-${id}-tables` });
  const content = element("div", { class: "offer__choice" }, box, element("div", {}, element("label", { for: `set-up-${id}` }, name), list));
  let missing: readonly string[] = [];
  return {
    content,
    wanted: () => (box.checked ? missing : []),
    show: (there) => {
      missing = tables.filter((table) => !there.includes(table));
      list.textContent = missing.join(", ");
      content.hidden = missing.length === 0;
      return missing.length;
    },
  };
}
