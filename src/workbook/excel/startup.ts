/** Whether Excel loads the add-in when it opens this workbook. Shared runtime 1.1, which the manifest asks for, brings it. */
import type { StartupChoice } from "../startup-choice";

export const excelStartup = (): StartupChoice => ({
  loadsWithWorkbook: async () => (await Office.addin.getStartupBehavior()) === Office.StartupBehavior.load,
  setLoadsWithWorkbook: (loads) => Office.addin.setStartupBehavior(loads ? Office.StartupBehavior.load : Office.StartupBehavior.none),
});
