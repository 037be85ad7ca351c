import { memoryWorkbook } from "../../src/workbook/memory";
import { workbookContract, type WorkbookUnderTest } from "./contract";

workbookContract("the workbook in memory", (tables) => {
  const port = memoryWorkbook(tables);
  const book: WorkbookUnderTest = {
    port,
    edit: (table, row, column, value) => { port.edit(table, row, column, value); },
    deleteTable: (table) => { port.deleteTable(table); },
    selection: () => port.selection,
    sheetNames: () => [...tables.map(({ sheet }) => sheet), ...port.sheets.keys()],
    sheet: (name) => port.sheets.get(name) ?? [],
    undo: () => { port.undo(); },
  };
  return Promise.resolve(book);
});
