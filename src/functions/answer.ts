/** The one place where a result or a fault becomes what a spreadsheet understands. */

/** A function that cannot answer at all: #VALUE! or #N/A in the cell, with a sentence. */
export class SheetError extends Error {
  /** @param unknownKey a key whose catalogue this session has not read */
  constructor(
    readonly kind: "value" | "notAvailable",
    message: string,
    readonly unknownKey?: string,
  ) {
    super(message);
    this.name = "SheetError";
  }
}

export const badValue = (message: string): SheetError => new SheetError("value", message);
export const notAvailable = (message: string, unknownKey?: string): SheetError => new SheetError("notAvailable", message, unknownKey);

/** Excel shows the message of its own error class only; elsewhere there is no such class and the error stays ours. */
export function answer<T>(make: () => T): T {
  try {
    return make();
  } catch (error) {
    if (!(error instanceof SheetError)) throw error;
    const shown = asPlatformError(error);
    if (error.unknownKey !== undefined) unknownKeys.set(shown, error.unknownKey);
    throw shown as unknown;
  }
}

/** The platform's errors travel to Excel as they are, so what is ours about them stands beside them. */
const unknownKeys = new WeakMap<object, string>();

/** The key that an error of `answer` is about, if it is one whose catalogue this session has not read. */
export const unknownKeyOf = (error: unknown): string | undefined => (typeof error === "object" && error !== null ? unknownKeys.get(error) : undefined);

function asPlatformError(error: SheetError): SheetError | CustomFunctions.Error {
  if (typeof CustomFunctions === "undefined" || typeof CustomFunctions.Error !== "function") return error;
  const code = error.kind === "value" ? CustomFunctions.ErrorCode.invalidValue : CustomFunctions.ErrorCode.notAvailable;
  return new CustomFunctions.Error(code, error.message);
}
