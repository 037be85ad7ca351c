/** What the eval command needs of the workbook and its grid, loaded as one. */
export { demoDocument } from "../src/embedded/demo-document";
export { evaluateFormula } from "../src/embedded/eval-formula";
export { productFunctions } from "../src/embedded/product-functions";
export { gridLibrary } from "./grid-library";
