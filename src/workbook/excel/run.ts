/** Batches against the open workbook, with patience: what fails only because Excel is busy is tried again. */

export interface RunChoices {
  /** All syncs of the batch are one step to undo, where the host can do that. */
  readonly oneUndoStep?: boolean;
  /** The context of an earlier batch, whose objects this one goes on with. */
  readonly previous?: Excel.RequestContext;
}

/** Runs a batch against the open workbook; Excel.run, or a stand-in for it in tests. */
export type RunBatch = <T>(batch: (context: Excel.RequestContext) => Promise<T>, choices?: RunChoices) => Promise<T>;

/** While the user types into a cell, a batch waits for the cell to be left. */
export const runInExcel: RunBatch = (batch, { oneUndoStep = false, previous } = {}) =>
  Excel.run({
    delayForCellEdit: true,
    ...(oneUndoStep && Office.context.requirements.isSetSupported("ExcelApi", MERGES_UNDO) ? { mergeUndoGroup: true } : {}),
    ...(previous ? { previousObjects: previous } : {}),
  }, batch);

/** Source: Excel.RunOptions.mergeUndoGroup in the platform's reference. */
const MERGES_UNDO = "1.20";

/** The code of an error of the platform; "" for any other error. */
export function codeOf(error: unknown): string {
  const { code } = (typeof error === "object" && error !== null ? error : {}) as { readonly code?: unknown };
  return typeof code === "string" ? code : "";
}

/** A batch that writes says when a sync with writes in it has gone through: from then on it must not be run again. */
export interface WriteProgress {
  written: boolean;
  /** From before the first sync with writes on: Excel carries a request out step by step, and what a fault leaves of it stays. */
  mayLeave?: Remains;
}

/** What a writing that breaks off can leave half done. */
export interface Remains {
  /** Asks the workbook. @returns a sentence on what is there now and was not before; undefined when nothing is */
  readonly look: (context: Excel.RequestContext) => Promise<string | undefined>;
  /** Said where the workbook cannot be asked. */
  readonly unseen: string;
}

export interface PatientRuns {
  reading<T>(batch: (context: Excel.RequestContext) => Promise<T>): Promise<T>;
  /** One step to undo. */
  writing<T>(batch: (context: Excel.RequestContext, progress: WriteProgress) => Promise<T>, progress?: WriteProgress): Promise<T>;
}

export function patientRuns(run: RunBatch, pause: (milliseconds: number) => Promise<void> = wait): PatientRuns {
  return {
    reading: (batch) => again(pause, isTransient, () => run(batch)),
    writing: (batch, progress = { written: false }) => {
      let oneUndoStep = true;
      const mayTryAgain = (error: unknown): boolean => {
        if (progress.written) return false;
        const cannotMerge = oneUndoStep && codeOf(error) === "UndoNotSupported";
        oneUndoStep &&= !cannotMerge;
        return cannotMerge || isTransient(error);
      };
      return again(pause, mayTryAgain, () => run((context) => batch(context, progress), { oneUndoStep }));
    },
  };
}

/**
 * Codes of faults that pass. From the platform's table of error codes: the request was aborted, the service is away, too
 * many requests at once, a cell is being edited, another workbook has the focus. GeneralException is none of them: it
 * stands for anything.
 */
const transientCodes = new Set(["RequestAborted", "ServiceNotAvailable", "ActivityLimitReached", "InvalidOperationInCellEditMode", "InactiveWorkbook"]);

const isTransient = (error: unknown): boolean => transientCodes.has(codeOf(error));

/** Milliseconds before the second try and those after it. */
const pauses = [150, 400, 1000];

async function again<T>(pause: (milliseconds: number) => Promise<void>, mayTryAgain: (error: unknown) => boolean, attempt: () => Promise<T>): Promise<T> {
  for (const milliseconds of pauses) {
    try {
      return await attempt();
    } catch (error) {
      if (!mayTryAgain(error)) throw error;
    }
    await pause(milliseconds);
  }
  return attempt();
}

const wait = (milliseconds: number): Promise<void> => new Promise((resolve) => { setTimeout(resolve, milliseconds); });
