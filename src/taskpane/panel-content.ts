/** The panel's content, and what it shows of the workbook at each moment. */
import type { WorkbookPort } from "../workbook/port";
import type { WorkbookReading } from "../workbook/workbook-reports";
import { failureNotice } from "./failure";
import { frameOf } from "./frame";
import { messageLine } from "./message-line";
import { places } from "./places";
import { progressLine, type ProgressActions } from "./progress-line";
import type { ExcelCare } from "./settings/excel-care";
import { firstRun } from "./set-up/first-run";
import { viewActions } from "./view-actions";
import { viewChoice } from "./view-choice";
import { sayVerdicts } from "./words";

export interface PanelContent {
  readonly content: HTMLElement;
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
}

export function panelContent(port: WorkbookPort, work: ProgressActions, { openDemo, excelCare }: HostOffers = {}): PanelContent {
  const state: { reading: WorkbookReading | undefined } = { reading: undefined };
  const [message, progress] = [messageLine(), progressLine(work)];
  const showChosen = (): void => { if (state.reading) choice.chosen().show(state.reading); };
  const actions = viewActions({ port, message, showChosen, excelCare, turnTo: (view) => { choice.turnTo(view); } });
  const choice = viewChoice(places, actions, showChosen);
  const beginning = firstRun(actions, openDemo);
  const frame = frameOf({ choice, progress, message });
  return {
    content: frame.content,
    showReading: (reading) => {
      state.reading = reading;
      progress.done();
      message.clear();
      frame.showProblem(undefined);
      const isEmpty = reading.cars.length === 0 && reading.tableErrors.length === 0;
      if (isEmpty) beginning.show(reading);
      else showChosen();
      frame.show(isEmpty ? beginning.content : undefined);
      message.speak(reading.cars.length === 0 ? "No cars yet." : `Up to date. ${sayVerdicts(reading.cars.map(({ verdict }) => verdict))}.`);
    },
    showProgress: progress.show,
    showHeld: progress.held,
    showFailure: (error, retry) => {
      progress.done();
      frame.showProblem(failureNotice({ error, retry, heading: "Plumbline could not read this workbook", advice: "Nothing in the workbook was changed. Try again; if it fails again, send the details below to whoever looks after Plumbline." }));
    },
    hideFailure: () => { frame.showProblem(undefined); },
    showFault: (error) => { choice.chosen().fail(error); },
  };
}
