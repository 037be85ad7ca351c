/** What the views ask of the panel, done in the workbook; what fails there is told in sight and never thrown into a view. */
import type { SayRow } from "../catalogue/table-error";
import { capital } from "../core/finding";
import type { WorkbookPort } from "../workbook/port";
import type { CarLine } from "../workbook/workbook-reports";
import { chosenCar } from "./car-list";
import type { MessageLine } from "./message-line";
import type { ViewActions } from "./view";

export interface ActionParts {
  readonly port: WorkbookPort;
  readonly message: MessageLine;
  /** Brings the view that is in sight up to date. */
  readonly showChosen: () => void;
  readonly turnTo: ViewActions["turnTo"];
  /** Whether the sheet is to follow when this car is chosen: the user stands among the cars, on another row. */
  readonly isFollowed: (line: CarLine) => boolean;
  /** As the workbook was read last. */
  readonly sayRow: SayRow;
  readonly excelCare: ViewActions["excelCare"];
}

export interface PanelActions extends ViewActions {
  /** The user went to a car's row in the sheet. */
  readonly standOn: (line: CarLine) => void;
}

export function viewActions({ port, message, showChosen, turnTo, isFollowed, sayRow, excelCare }: ActionParts): PanelActions {
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
  const choose = (line: CarLine): void => {
    chosen.choose(line);
    showChosen();
  };
  return {
    turnTo, inWorkbook, excelCare,
    selectRow: (table, row, column) => void inWorkbook("That row could not be selected.", async () => {
      await port.selectTableRow(table, row, column);
      message.speak(`${capital(sayRow(table, row + 1))} of ${table} is selected in the sheet.`);
    }),
    writeCell: (place, value) => inWorkbook(`${place.column} was not written.`, () => port.writeTableCell(place, value)),
    sheetNames: () => port.sheetNames().catch(() => []),
    carOf: chosen.of,
    chooseCar: (line) => {
      choose(line);
      if (isFollowed(line)) void inWorkbook("The sheet did not follow.", () => port.selectTableRow(line.table, line.row));
    },
    standOn: choose,
  };
}

const sayError = (error: unknown): string => (error instanceof Error ? error.message : String(error));
