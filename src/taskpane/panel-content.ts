/** The panel's content, and what it shows of the workbook at each moment. */
import type { TablePlace, WorkbookPort } from "../workbook/port";
import type { CarLine, WorkbookReading } from "../workbook/workbook-reports";
import { failureNotice } from "./failure";
import { frameOf } from "./frame";
import { messageLine } from "./message-line";
import { places } from "./places";
import { progressLine, type ProgressActions } from "./progress-line";
import { rememberFor } from "./remembered";
import type { ExcelCare } from "./settings/excel-care";
import { firstRun } from "./set-up/first-run";
import { viewActions } from "./view-actions";
import { viewChoice } from "./view-choice";
import { sayVerdicts } from "./words";

export interface PanelContent {
  readonly content: HTMLElement;
  /** Takes up the choices that were made in this workbook before. */
  remember(workbook: string): void;
  /** The user stands somewhere else in the sheet. */
  showSelection(place: TablePlace | undefined): void;
  showReading(reading: WorkbookReading): void;
  showProgress(done: number, total: number): void;
  /** The work stands still, as the user wanted. */
  showHeld(): void;
  /** The workbook could not be read. */
  showFailure(error: unknown, retry: () => void): void;
  hideFailure(): void;
  /** The view in sight stopped on a fault. */
  showFault(error: unknown): void;
}

/** What only some hosts can do. */
export interface HostOffers {
  /** Opens the demo in place of the workbook; left out, the demo comes into the workbook as new sheets. */
  readonly openDemo?: () => void;
  /** Repair of formulas, and loading with the workbook. */
  readonly excelCare?: ExcelCare;
  /** Whether sheet and panel are both in sight, so that the sheet may follow the panel's choice of a car; always, when left out. */
  readonly isSheetInSight?: () => boolean;
}

export function panelContent(port: WorkbookPort, work: ProgressActions, { openDemo, excelCare, isSheetInSight = () => true }: HostOffers = {}): PanelContent {
  const state: { reading: WorkbookReading | undefined; standing: TablePlace | undefined } = { reading: undefined, standing: undefined };
  const [message, progress] = [messageLine(), progressLine(work)];
  const showChosen = (): void => { if (state.reading) choice.chosen().show(state.reading); };
  const isFollowed = ({ table, row }: CarLine): boolean => isSheetInSight() && state.standing?.table === table && state.standing.row !== row;
  const actions = viewActions({ port, message, showChosen, isFollowed, excelCare, sayRow: (table, row) => state.reading?.sayRow(table, row) ?? "the row", turnTo: (view) => { choice.turnTo(view); } });
  const choice = viewChoice(places, actions, showChosen);
  const beginning = firstRun(actions, openDemo);
  const frame = frameOf({ choice, progress, message });
  return {
    content: frame.content,
    remember: (workbook) => { rememberFor(workbook); choice.restore(); },
    showSelection: (place) => {
      state.standing = place;
      const line = place && state.reading?.cars.find(({ table, row }) => table === place.table && row === place.row);
      if (line) actions.standOn(line);
      else if (place) choice.chosen().stand(place);
    },
    showReading: (reading) => {
      state.reading = reading;
      progress.done();
      message.clear();
      frame.showProblem(undefined);
      const isEmpty = reading.cars.length === 0 && reading.tableErrors.length === 0;
      if (isEmpty) beginning.show(reading);
      else showChosen();
      frame.show(isEmpty ? beginning.content : undefined);
      message.speak(sayUpToDate(reading));
    },
    showProgress: progress.show,
    showHeld: progress.held,
    showFailure: (error, retry) => {
      progress.done();
      frame.showProblem(readingFailed(error, retry));
    },
    hideFailure: () => { frame.showProblem(undefined); },
    showFault: (error) => { choice.chosen().fail(error); },
  };
}

const sayUpToDate = ({ cars }: WorkbookReading): string => (cars.length === 0 ? "No cars yet." : `Up to date. ${sayVerdicts(cars.map(({ verdict }) => verdict))}.`);

const readingFailed = (error: unknown, retry: () => void): HTMLElement =>
  failureNotice({ error, retry, heading: "Plumbline could not read this workbook", advice: "Nothing in the workbook was changed. Try again; if it fails again, send the details below to whoever looks after Plumbline." });
