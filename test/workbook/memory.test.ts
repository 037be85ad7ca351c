import { headingIndex } from "../../src/workbook/port";
import { memoryWorkbook } from "../../src/workbook/memory";
import { cellStyles } from "../../src/workbook/sheet-content";
import { plainly, workbookContract, type WorkbookUnderTest } from "./contract";

workbookContract("the workbook in memory", (tables) => {
  const port = memoryWorkbook(tables, "Shop.xlsx");
  const book: WorkbookUnderTest = {
    port,
    edit: (table, row, column, value) => { port.edit(table, row, column, value); },
    deleteTable: (table) => { port.deleteTable(table); },
    selection: () => port.selected,
    stand: (place) => { port.select(place); },
    formula: (sheet, address) => port.formulas.get(`${sheet}!${address}`),
    sheetNames: () => port.sheetList(),
    front: () => port.front,
    sheet: (name) => port.sheets.get(name) ?? [],
    shownLooks: (name) => {
      const { rows = [], styles = [], columnWidths = [], rowHeights = [], merges = [], pictures = [], page, frozenRows = 0 } = port.contents.get(name) ?? {};
      // A number format says nothing about a text or a blank.
      const looks = [...cellStyles(styles)].map(([address, { format, ...look }]) => {
        const [column = 0, row = 0] = [address.charCodeAt(0) - 65, Number(address.slice(1)) - 1];
        return [address, typeof rows[row]?.[column] === "number" && format !== undefined ? { ...look, format } : look] as const;
      });
      return { styles: plainly(looks), columnWidths, rowHeights, merges, pictures, page, frozenRows };
    },
    choices: (name, row, column) => {
      const table = port.made.get(name);
      return table?.lists.find(({ area }) => area.column === headingIndex(table.headings, column) && row + 1 < area.row + area.rows)?.values;
    },
    undo: () => { port.undo(); },
  };
  return Promise.resolve(book);
});
