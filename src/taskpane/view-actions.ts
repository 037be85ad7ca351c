/** What the views ask of the panel, done in the workbook; what fails there is told in sight and never thrown into a view. */
import type { WorkbookPort } from "../workbook/port";
import { chosenCar } from "./car-list";
import type { MessageLine } from "./message-line";
import type { ViewActions } from "./view";

export interface ActionParts {
  readonly port: WorkbookPort;
  readonly message: MessageLine;
  /** Brings the view that is in sight up to date. */
  readonly showChosen: () => void;
  readonly turnTo: ViewActions["turnTo"];
  readonly excelCare: ViewActions["excelCare"];
}

export function viewActions({ port, message, showChosen, turnTo, excelCare }: ActionParts): ViewActions {
  const chosen = chosenCar();
  const inWorkbook: ViewActions["inWorkbook"] = async (failed, work) => {
    try {
      const result = await work(port);
      message.clear();
      return result;
    } catch (error) {
      message.show(`${failed} ${sayError(error)}`);
      return undefined;
    }
  };
  return {
    turnTo, inWorkbook, excelCare,
    selectRow: (table, row, column) => void inWorkbook("That row could not be selected.", async () => {
      await port.selectTableRow(table, row, column);
      message.speak(`Row ${row + 1} of ${table} is selected in the sheet.`);
    }),
    writeCell: (place, value) => inWorkbook(`${place.column} was not written.`, () => port.writeTableCell(place, value)),
    carOf: chosen.of,
    chooseCar: (line) => {
      chosen.choose(line);
      showChosen();
    },
  };
}

const sayError = (error: unknown): string => (error instanceof Error ? error.message : String(error));
