/** Run by without-eval.test.ts in a Node that makes no code of text, as a page without 'unsafe-eval'. Prints what came of it. */
import { gridLibrary } from "../../scripts/grid-library";
import { demoDocument } from "../../src/embedded/demo-document";
import { openGrid } from "../../src/embedded/grid/grid";
import { productFunctions } from "../../src/embedded/product-functions";
import { demoTables } from "../../src/catalogue/demo";
import { worksheetFunctions } from "../../src/functions/registry";
import { readXlsx } from "../../src/workbook/xlsx/read";
import { writeXlsx } from "../../src/workbook/xlsx/write";

const call = (name: string, ...args: readonly unknown[]): unknown => (worksheetFunctions[name] as (...values: readonly unknown[]) => unknown)(...args);
const rangeOf = (name: string): readonly (readonly unknown[])[] => demoTables.filter((table) => table.name === name).flatMap(({ headings, rows }) => [headings, ...rows]);

const parts = demoTables.map(({ name }) => name).filter((name) => !["Cars", "Seen", "Usage", "Pipeline"].includes(name));
const [headings = [], ...cars] = rangeOf("Cars");
const verdicts = call("VERDICT", [headings], cars, call("CATALOG", parts.map(rangeOf))) as unknown[][];
const document = readXlsx(writeXlsx(demoDocument(45_000)));
const grid = openGrid(gridLibrary, { sheets: [{ name: "S", tables: [], cells: new Map([["A1", { value: "", formula: "=1+1" }]]) }] }, productFunctions);

console.log(JSON.stringify({ verdicts: verdicts.length - 1, cars: cars.length, sheets: document.sheets.length > 10, onePlusOne: grid.value("S", "A1") }));
