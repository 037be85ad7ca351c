/** Why Excel refused to write, in plain sentences. */
import { codeOf, type PatientRuns, type WriteProgress } from "./run";

/** Gives the sheet that was to be written to; undefined when a new one was to be added. */
export type SheetOf = (context: Excel.RequestContext) => Excel.Worksheet | undefined;

/**
 * The error to show, in a sentence; an error of our own is one already.
 * It asks the workbook only after a refusal, so that writing costs no more syncs than it needs.
 */
export async function refusal(runs: PatientRuns, error: unknown, sheetOf: SheetOf, { mayLeave }: Partial<WriteProgress> = {}): Promise<unknown> {
  const code = codeOf(error);
  if (code === "") return error;
  const left = mayLeave && (await runs.reading(mayLeave.look).catch(() => mayLeave.unseen));
  if (left !== undefined) return new Error(`Excel broke off while it was writing (${code}). ${left}`, { cause: error });
  const said = sentences[code];
  if (said !== undefined) return new Error(said, { cause: error });
  const reason = protectionCodes.has(code) ? await runs.reading((context) => protection(context, sheetOf)).catch(() => undefined) : undefined;
  if (reason !== undefined) return new Error(reason, { cause: error });
  return new Error(code === "AccessDenied" ? "Excel does not let this add-in change the workbook, so nothing was written." : `Excel broke off while it was writing (${code}). See what is there, and try again.`, { cause: error });
}

/** What hosts answer to a write that protection forbids: AccessDenied by the reference, the others by some versions. */
const protectionCodes = new Set(["AccessDenied", "InvalidOperation", "GeneralException"]);

const sentences: Readonly<Record<string, string>> = {
  ApiNotFound: "This Excel is too old for that, so nothing was written. Bring it up to date and try again.",
  InvalidOperationInCellEditMode: "A cell is still being typed into, so nothing was written. Press Enter and try again.",
  InactiveWorkbook: "Another workbook is in front, so nothing was written. Go back to this one and try again.",
  ServiceNotAvailable: "Excel cannot be reached at the moment. Try again.",
  ResponsePayloadSizeLimitExceeded: "One row holds more than Excel gives at once, so nothing was done. Shorten its texts and try again.",
  RequestAborted: "Excel broke the work off. Look at what is there, undo it if need be, and try again.",
};

async function protection(context: Excel.RequestContext, sheetOf: SheetOf): Promise<string | undefined> {
  const { workbook } = context;
  workbook.load("readOnly");
  workbook.protection.load("protected");
  const sheet = sheetOf(context)?.load("name");
  sheet?.protection.load("protected");
  await context.sync();
  if (workbook.readOnly) return "This workbook is open for reading only, so nothing was written. Open it for editing, or save a copy, and try again.";
  if (sheet?.protection.protected) return `The sheet ${sheet.name} is protected, so nothing was written. Unprotect it on the Review tab and try again.`;
  if (!sheet && workbook.protection.protected) return "The workbook is protected against new sheets, so nothing was written. Unprotect it on the Review tab and try again.";
  return undefined;
}
