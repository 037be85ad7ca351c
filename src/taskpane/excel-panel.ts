/** The panel over Excel's own workbook. */
import { rememberCatalogue } from "../functions/reports";
import { excelPort } from "../workbook/excel";
import { excelRepair } from "../workbook/excel/repair";
import { excelStartup } from "../workbook/excel/startup";
import { officeTheme } from "../workbook/excel/theme";
import { readCatalogue } from "../workbook/workbook-reports";
import { mountPanel } from "./panel";
import stylesheet from "./panel.css";

export function showPanelInExcel(place: HTMLElement): void {
  mountPanel(place, excelPort(), { stylesheet, theme: officeTheme, excelCare: { repair: excelRepair(), startup: excelStartup() } });
}

/** For the worksheet functions, which share the panel's cache. */
export async function readCatalogueInExcel(): Promise<void> {
  rememberCatalogue(await readCatalogue(excelPort()));
}
