/** The one place where a result or a fault becomes what a spreadsheet understands. */

/** A function that cannot answer at all: #VALUE! or #N/A in the cell, with a sentence. */
export class SheetError extends Error {
  constructor(
    readonly kind: "value" | "notAvailable",
    message: string,
  ) {
    super(message);
    this.name = "SheetError";
  }
}

export const badValue = (message: string): SheetError => new SheetError("value", message);
export const notAvailable = (message: string): SheetError => new SheetError("notAvailable", message);

/** Excel shows the message of its own error class only; elsewhere there is no such class and the error stays ours. */
export function answer<T>(make: () => T): T {
  try {
    return make();
  } catch (error) {
    throw error instanceof SheetError ? asPlatformError(error) : error;
  }
}

function asPlatformError(error: SheetError): SheetError | CustomFunctions.Error {
  if (typeof CustomFunctions === "undefined" || typeof CustomFunctions.Error !== "function") return error;
  const code = error.kind === "value" ? CustomFunctions.ErrorCode.invalidValue : CustomFunctions.ErrorCode.notAvailable;
  return new CustomFunctions.Error(code, error.message);
}
