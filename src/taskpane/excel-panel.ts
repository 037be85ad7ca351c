/** The panel over Excel's own workbook. */
import { excelPort } from "../workbook/excel";
import { mountPanel } from "./panel";
import stylesheet from "./panel.css";

export function showPanelInExcel(place: HTMLElement): void {
  mountPanel(place, excelPort(), { stylesheet });
}
