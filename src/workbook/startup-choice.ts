/** The user's choice, kept in the workbook, whether the add-in is loaded as soon as the workbook is opened. */
export interface StartupChoice {
  loadsWithWorkbook(): Promise<boolean>;
  /** Holds from the next opening on, once the workbook is saved. */
  setLoadsWithWorkbook(loads: boolean): Promise<void>;
}
