/** What only Excel needs: formulas that are stuck entered again, and the add-in loaded with the workbook or not. */
import type { FormulaRepair, RepairOutcome } from "../../workbook/formula-repair";
import type { StartupChoice } from "../../workbook/startup-choice";
import { element } from "../element";

export interface ExcelCare {
  readonly repair: FormulaRepair;
  readonly startup: StartupChoice;
}

/** A section for the settings of the panel; nothing in it is done without a click. */
export function excelCare({ repair, startup }: ExcelCare): HTMLElement {
  return element("section", { class: "settings__group excel-care", "aria-labelledby": "excel-care-heading" },
    element("h3", { id: "excel-care-heading", class: "settings__heading" }, "This workbook in Excel"), repairPart(repair), startupPart(startup));
}

function repairPart(repair: FormulaRepair): HTMLElement {
  const button = element("button", { type: "button", class: "button button--plain" }, "Repair formulas");
  const said = element("p", { role: "status", class: "excel-care__said" });
  button.addEventListener("click", () => void busy(button, said, async () => sayRepaired(await repair.repairFormulas())));
  return element("div", { class: "excel-care__part" },
    element("p", {}, "Enters again the PLUMB formulas that show #NAME?, #BUSY! or #N/A. What they say stays the same, and one undo takes it back."), button, said);
}

/** What was done, in a sentence. */
export function sayRepaired({ repaired, refused }: RepairOutcome): string {
  const done = repaired.length === 0
    ? "No PLUMB formula is stuck."
    : repaired.length === 1 ? `Entered again: ${repaired[0] ?? ""}.` : `Entered again: ${repaired.length} formulas, the first in ${repaired[0] ?? ""}.`;
  const left = refused.length === 0 ? "" : ` Left as they are, because the sheet is protected: ${refused.join(", ")}.`;
  return (repaired.length === 0 && refused.length > 0 ? "Nothing was entered." : done) + left;
}

function startupPart(startup: StartupChoice): HTMLElement {
  const box = element("input", { type: "checkbox", id: "excel-care-startup", disabled: true });
  const said = element("p", { role: "status", class: "excel-care__said" });
  const show = async (): Promise<void> => {
    box.checked = await startup.loadsWithWorkbook();
    box.disabled = false;
  };
  show().catch(() => { said.textContent = "This Excel does not tell whether it loads Plumbline with the workbook."; });
  box.addEventListener("change", () => void busy(box, said, async () => {
    const wanted = box.checked;
    try {
      await startup.setLoadsWithWorkbook(wanted);
    } catch (error) {
      box.checked = !wanted;
      throw error;
    }
    return wanted ? "From the next opening on, when the workbook is saved, its formulas answer at once." : "From the next opening on, Plumbline loads when it is asked for.";
  }));
  return element("div", { class: "excel-care__part" }, element("label", { for: box.id }, box, " Load Plumbline whenever this workbook is opened"), said);
}

/** Keeps a control from being used twice at once, and says how it went. */
async function busy(control: HTMLButtonElement | HTMLInputElement, said: HTMLElement, work: () => Promise<string>): Promise<void> {
  control.disabled = true;
  said.textContent = "";
  try {
    said.textContent = await work();
  } catch (error) {
    said.textContent = error instanceof Error ? error.message : String(error);
  } finally {
    control.disabled = false;
    control.focus();
  }
}
