/**
 * One number of money, wherever it stands: in the panel, on the sheet and in the answer of QUOTE.
 * Jest would clear away the document while its own clearing still looks at it.
 * @jest-environment-options {"globalsCleanup": "off"}
 */
import { JSDOM } from "jsdom";
import { demoTables } from "../../../src/catalogue/demo";
import { parseCars } from "../../../src/catalogue/parse-cars";
import { parseCatalogue } from "../../../src/catalogue/parse-catalogue";
import { quoteFor } from "../../../src/core/quote";
import type { CarReport } from "../../../src/core/report";
import { reportOnRow } from "../../../src/functions/reports";
import { laidOut } from "../../../src/functions/columns";
import { quoteColumns, quoteRows } from "../../../src/functions/quote-tables";
import { quotePaper } from "../../../src/taskpane/quote/quote-paper";
import { quoteSheet } from "../../../src/workbook/sheets/quote-sheet";

const carsTable = demoTables.find(({ name }) => name === "Cars");
const money = [["labour rate", 90, "", ""], ["discount", 7.5, "%", ""], ["tax", 8.25, "%", ""], ["freight", 21.4, "", ""], ["price basis", "markup", "", ""], ["markup or margin", 33, "%", ""]];
const { catalogue } = parseCatalogue([...demoTables.filter(({ name }) => name !== "Cars" && name !== "Settings"), { name: "Settings", headings: ["Setting", "Value", "Unit", "Source"], rows: money }]);
const reports = parseCars(carsTable?.headings ?? [], carsTable?.rows ?? []).cars.flatMap((row): CarReport[] => {
  const report = reportOnRow(catalogue, row);
  return report ? [report] : [];
});

beforeAll(() => { globalThis.document = new JSDOM().window.document; });

/** Prices and amounts, then the totals, in the order they stand. */
function inPanel(report: CarReport): number[] {
  const shown = quotePaper({ report, quote: quoteFor(catalogue, report), settings: catalogue.settings });
  return [...shown.querySelectorAll("[data-money]")].map(({ textContent }) => textContent.replace(/,/g, "")).filter((text) => text !== "" && text !== "no price").map(Number);
}

function onSheet(report: CarReport): number[] {
  const { rows } = quoteSheet(catalogue, [{ report }], { date: "", validUntil: "", revision: 1 });
  const from = rows.findIndex(([first]) => first === "Item");
  return rows.slice(from + 1).flatMap(([, , , price, amount]) => [price, amount].filter((cell) => typeof cell === "number"));
}

function byFunction(report: CarReport): number[] {
  const [headings = [], ...rows] = laidOut(quoteColumns, quoteRows(catalogue, { label: report.car.name, problem: "", report }), "us");
  const [price, amount] = [headings.indexOf("Price"), headings.indexOf("Amount")];
  return rows.flatMap((row) => [row[price], row[amount]]).filter((cell) => typeof cell === "number");
}

test("panel, sheet and function say the same money for every car of the demo, discount, freight and tax in it", () => {
  const figures = reports.map((report) => ({ car: report.car.name, panel: inPanel(report), sheet: onSheet(report), answer: byFunction(report) }));
  expect(figures.filter(({ panel }) => panel.length > 6).length).toBeGreaterThan(10);
  for (const { car, panel, sheet, answer } of figures) expect([car, panel, sheet]).toEqual([car, answer, answer]);
});
