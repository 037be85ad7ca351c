/** The panel over Excel's own workbook. */
import { excelPort } from "../workbook/excel";
import { excelRepair } from "../workbook/excel/repair";
import { excelStartup } from "../workbook/excel/startup";
import { mountPanel } from "./panel";
import stylesheet from "./panel.css";

export function showPanelInExcel(place: HTMLElement): void {
  mountPanel(place, excelPort(), { stylesheet, excelCare: { repair: excelRepair(), startup: excelStartup() } });
}
