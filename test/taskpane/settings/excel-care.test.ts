import { JSDOM } from "jsdom";
import { excelCare, sayRepaired, type ExcelCare } from "../../../src/taskpane/settings/excel-care";

beforeAll(() => { globalThis.document = new JSDOM("").window.document; });

const settled = (): Promise<void> => new Promise((resolve) => { setTimeout(resolve, 0); });

function show(given: Partial<ExcelCare>) {
  const kept = { loads: true };
  const care: ExcelCare = {
    repair: { repairFormulas: () => Promise.resolve({ repaired: ["Runs!A3"], refused: [] }) },
    startup: { loadsWithWorkbook: () => Promise.resolve(kept.loads), setLoadsWithWorkbook: (loads) => { kept.loads = loads; return Promise.resolve(); } },
    ...given,
  };
  const section = excelCare(care);
  document.body.replaceChildren(section);
  const [button, box] = [section.querySelector("button"), section.querySelector("input")];
  const [repaired, startup] = [...section.querySelectorAll("[role=status]")];
  if (!button || !box) throw new Error("There is no button or no box.");
  return { kept, button, box, said: () => [repaired?.textContent, startup?.textContent] };
}

test("nothing is repaired before the click, and the click says what was done", async () => {
  let repairs = 0;
  const { button, said } = show({ repair: { repairFormulas: () => { repairs += 1; return Promise.resolve({ repaired: ["Runs!A3"], refused: [] }); } } });
  await settled();
  expect(repairs).toBe(0);
  button.click();
  button.click(); // while it works
  await settled();
  expect([repairs, said()[0], button.disabled]).toEqual([1, "Entered again: Runs!A3.", false]);
});

test("a refusal is said in its own words", async () => {
  const { button, said } = show({ repair: { repairFormulas: () => Promise.reject(new Error("This workbook is open for reading only.")) } });
  button.click();
  await settled();
  expect(said()[0]).toBe("This workbook is open for reading only.");
});

test("the box shows what holds, a click changes it, and a second takes it back", async () => {
  const { box, kept, said } = show({});
  expect(box.disabled).toBe(true);
  await settled();
  expect([box.checked, box.disabled]).toEqual([true, false]);
  box.click();
  await settled();
  expect([kept.loads, said()[1]]).toEqual([false, "From the next opening on, Plumbline loads when it is asked for."]);
  box.click();
  await settled();
  expect(kept.loads).toBe(true);
});

test("where Excel refuses, the box goes back to what holds", async () => {
  const { box, said } = show({ startup: { loadsWithWorkbook: () => Promise.resolve(false), setLoadsWithWorkbook: () => Promise.reject(new Error("Not here.")) } });
  await settled();
  box.click();
  await settled();
  expect([box.checked, said()[1]]).toEqual([false, "Not here."]);
});

test("a host that does not tell leaves the box shut and says so", async () => {
  const { box, said } = show({ startup: { loadsWithWorkbook: () => Promise.reject(new Error("no")), setLoadsWithWorkbook: () => Promise.resolve() } });
  await settled();
  expect([box.disabled, said()[1]]).toEqual([true, "This Excel does not tell whether it loads Plumbline with the workbook."]);
});

test.each([
  [{ repaired: [], refused: [] }, "No PLUMB formula is stuck."],
  [{ repaired: ["A!A1", "A!A2", "B!C3"], refused: ["Locked"] }, "Entered again: 3 formulas, the first in A!A1. Left as they are, because the sheet is protected: Locked."],
  [{ repaired: [], refused: ["Locked"] }, "Nothing was entered. Left as they are, because the sheet is protected: Locked."],
])("%j", (outcome, sentence) => expect(sayRepaired(outcome)).toBe(sentence));
