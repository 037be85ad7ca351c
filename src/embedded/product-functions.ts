/** Our worksheet functions as the grid takes them. */
import described from "../functions/functions.json";
import { worksheetFunctions } from "../functions/registry";
import { type FunctionSet } from "./grid/functions";

/** Our worksheet functions as the grid needs them: descriptions from functions.json, code from the registry. */
export const productFunctions: FunctionSet = {
  namespace: "PLUMB",
  allowErrorForDataTypeAny: described.allowErrorForDataTypeAny,
  metadata: described.functions,
  functions: worksheetFunctions,
};
