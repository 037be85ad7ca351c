/** Stands in for the platform's own script: Excel with the demo workbook, in the page of the add-in. */
import { demoTables } from "../../src/catalogue/demo";
import { FakeExcel } from "../workbook/fake-excel";

type WorksheetFunction = (...values: unknown[]) => Promise<unknown>;

declare global {
  interface Window {
    excel: FakeExcel;
    /** The worksheet functions that were associated, by id. */
    associated: Record<string, WorksheetFunction>;
    startupBehavior: string;
    /** Ground of Excel's own windows; some Excels do not say it. */
    officeGround: string | undefined;
  }
}

window.excel = new FakeExcel(demoTables.map((table) => ({ ...table, sheet: table.name })));
window.associated = {};
window.startupBehavior = "None";

const office = {
  onReady: async (ready?: (info: object) => unknown) => {
    const info = { host: "Excel", platform: "OfficeOnline" };
    await Promise.resolve();
    ready?.(info);
    return info;
  },
  HostType: { Excel: "Excel" },
  StartupBehavior: { load: "Load", none: "None" },
  context: { requirements: { isSetSupported: () => true }, get officeTheme() { return window.officeGround === undefined ? undefined : { bodyBackgroundColor: window.officeGround }; } },
  addin: {
    getStartupBehavior: () => Promise.resolve(window.startupBehavior),
    setStartupBehavior: (behavior: string) => {
      window.startupBehavior = behavior;
      return Promise.resolve();
    },
  },
};

const excel = {
  run: <T>(options: Excel.RunOptions, batch: (context: Excel.RequestContext) => Promise<T>): Promise<T> =>
    window.excel.run(batch, { oneUndoStep: options.mergeUndoGroup === true, ...(options.previousObjects ? { previous: options.previousObjects as Excel.RequestContext } : {}) }),
};

class FunctionError extends Error {
  constructor(readonly code: string, message: string) {
    super(message);
  }
}

const functions = {
  associate: (id: string, run: WorksheetFunction) => { window.associated[id] = run; },
  Error: FunctionError,
  ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" },
};

Object.assign(window, { Office: office, Excel: excel, CustomFunctions: functions });
