/** Formulas of ours that are stuck, and how they are entered again. */

export interface RepairOutcome {
  /** Addresses with their sheets of the cells that were entered again. */
  readonly repaired: readonly string[];
  /** Names of sheets with stuck formulas that are protected, where nothing was done. */
  readonly refused: readonly string[];
}

export interface FormulaRepair {
  /**
   * Enters again, as one undo step, the formulas of ours that show #NAME?, #BUSY! or #N/A; what they say stays the same.
   * @throws Error with a plain sentence when the workbook cannot be changed
   */
  repairFormulas(): Promise<RepairOutcome>;
}

/**
 * Does a cell hold a formula of ours that waits, or that was calculated while the add-in was away?
 * A #VALUE! is an answer: it says what is wrong with a table.
 */
export const isStuck = (formula: string, shown: unknown): boolean => stuck.has(String(shown)) && /\bPLUMB\.|_xldudf_PLUMB_/i.test(formula);

const stuck = new Set(["#NAME?", "#BUSY!", "#N/A"]);

/** As it is typed: a workbook opened without the add-in shows the names that files hold. */
export const asTyped = (formula: string): string => formula.replace(/_xldudf_PLUMB_(?=[A-Z])/gi, "PLUMB.");

/** The formulas that read the catalogue come first: the others ask for what they have read. */
export const catalogueFirst = (formulas: readonly string[]): readonly number[] => {
  const reads = (formula: string): boolean => /PLUMB\.CATALOG\(/i.test(formula);
  return formulas.map((_, index) => index).sort((a, b) => Number(reads(formulas[b] ?? "")) - Number(reads(formulas[a] ?? "")));
};
