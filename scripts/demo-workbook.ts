import { writeFileSync } from "node:fs";
import { demoDocument } from "../src/embedded/demo-document";
import { openGrid } from "../src/embedded/grid/grid";
import { productFunctions } from "../src/embedded/product-functions";
import { writeXlsx } from "../src/workbook/xlsx/write";
import { gridLibrary } from "./grid-library";

// Writes the demo workbook, calculated, to the file named or to plumbline-demo.xlsx.
const file = process.argv[2] ?? "plumbline-demo.xlsx";
writeFileSync(file, writeXlsx(openGrid(gridLibrary, demoDocument(), productFunctions).document()));
console.log(`${file} holds the demo workbook.`);
