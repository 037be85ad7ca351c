/** The Functions view: every worksheet function by family, with an example that a click enters into the sheet. */
import { functionReference, type FunctionEntry, type FunctionFamily } from "../../functions/reference";
import { element } from "../element";
import type { View, ViewActions } from "../view";
import { sayNumber } from "../words";

export function functionsView(actions: ViewActions): View {
  const search = element("input", { type: "search", class: "search__field", id: "function-search", placeholder: "Name or what it does", autocomplete: "off", spellcheck: "false" });
  const [families, found] = [element("div", { class: "functions" }), element("p", { class: "nothing", role: "status" })];
  let shown: { readonly units: string; readonly parts: readonly FamilyPart[] } | undefined;
  const filter = (): void => {
    const words = search.value.toLowerCase().split(/\s+/).filter((word) => word !== "");
    const left = (shown?.parts ?? []).reduce((sum, part) => sum + part.filter(words), 0);
    found.textContent = words.length === 0 ? "" : left === 0 ? "No function fits these words." : `${sayNumber(left)} found.`;
  };
  search.addEventListener("input", filter);
  const content = element("div", { class: "functions-view" },
    element("h2", { class: "tally" }, "Worksheet functions"),
    element("p", { class: "functions__intro" }, "The same answers as in this panel, in cells. Select a blank cell with room below and to the right, then insert an example and change it. Most take the key of the catalogue, a cell that stands for all your parts and prices; set-up puts it into B2 of the sheet Catalog."),
    element("div", { class: "search", role: "search", "aria-label": "Functions" }, element("label", { class: "unseen", for: "function-search" }, "Search the functions"), search),
    found, families);
  return {
    id: "functions", name: "Functions", content,
    show: ({ catalogue: { settings: { units } } }) => {
      if (shown?.units === units) return;
      const parts = functionReference(units).map((family) => familyPart(family, actions));
      shown = { units, parts };
      families.replaceChildren(...parts.map((part) => part.content));
      filter();
    },
  };
}

interface FamilyPart {
  readonly content: HTMLElement;
  /** Hides what lacks one of the words. @returns how many functions are left */
  filter(words: readonly string[]): number;
}

function familyPart({ name, functions }: FunctionFamily, actions: ViewActions): FamilyPart {
  const entries = functions.map((one) => ({ text: `${one.id} ${one.description} ${one.columns.join(" ")}`.toLowerCase(), node: functionCard(one, actions) }));
  const content = element("section", { class: "functions__family" }, element("h3", { class: "functions__heading" }, name), ...entries.map(({ node }) => node));
  return {
    content,
    filter: (words) => {
      for (const { text, node } of entries) node.hidden = !words.every((word) => text.includes(word));
      const left = entries.filter(({ node }) => !node.hidden).length;
      content.hidden = left === 0;
      return left;
    },
  };
}

function functionCard({ id, description, signature, arguments: takes, columns, example }: FunctionEntry, actions: ViewActions): HTMLElement {
  return element("details", { class: "function", "data-function": id },
    element("summary", {}, element("span", { class: "function__name" }, id), element("span", { class: "function__says" }, ` ${description}`)),
    element("code", { class: "function__formula" }, `=${signature}`),
    element("dl", { class: "function__arguments" }, ...takes.flatMap(({ name, says }) => [element("dt", {}, name), element("dd", {}, says)])),
    element("p", { class: "function__columns" }, columns.length === 0 ? "Answers with one cell." : `Answers with a table: ${columns.join(" · ")}.`),
    element("p", { class: "function__label" }, "Example"),
    element("code", { class: "function__formula" }, `=${example}`),
    inserter(id, example, actions));
}

function inserter(id: string, example: string, { inWorkbook }: ViewActions): HTMLElement {
  const said = element("span", { role: "status" });
  const button = element("button", { type: "button", class: "button" }, "Insert in the selected cell", element("span", { class: "unseen" }, ` the example of ${id}`));
  button.addEventListener("click", () => {
    said.textContent = "";
    void inWorkbook("The example was not inserted.", async (port) => {
      const { exampleHere } = await import(/* webpackChunkName: "set-up" */ "../../workbook/example-here");
      return port.insertFormula(`=${await exampleHere(port, example)}`);
    }).then((address) => {
      if (address !== undefined) said.textContent = `It stands in ${address}.`;
    });
  });
  return element("p", { class: "function__insert" }, button, said);
}
