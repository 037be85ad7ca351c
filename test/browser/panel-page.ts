/** A page with nothing but the panel over a workbook in memory, which tests edit as a user would. */
import { demoTables } from "../../src/catalogue/demo";
import { mountPanel, type Panel } from "../../src/taskpane/panel";
import { memoryWorkbook, type MemoryWorkbook } from "../../src/workbook/memory";
import type { TableContent } from "../../src/workbook/port";

declare global {
  interface Window {
    workbook: MemoryWorkbook;
    panel: Panel;
    /** Makes the next readings of the workbook fail. */
    failing: boolean;
  }
}

const query = new URLSearchParams(location.search);
const host = document.getElementById("panel");
if (!host) throw new Error("The page has no place for the panel.");
window.workbook = memoryWorkbook(tablesFor(query.get("book") ?? "demo"), query.get("name") ?? "Workbook");
window.failing = query.has("failing");
const tableNames = window.workbook.tableNames.bind(window.workbook);
window.workbook.tableNames = () => (window.failing ? Promise.reject(new Error("the workbook is busy")) : tableNames());
window.panel = mountPanel(query.has("shadow") ? host.attachShadow({ mode: "open" }) : host, window.workbook, { stylesheet: "panel.css" });

/** The demo; nothing; the demo's parts with a table of cars without rows; its cars over and over; or over and over ("unlike 8000") and each with a pedal of its own, so that no two share their work. */
function tablesFor(book: string): readonly TableContent[] {
  const demo = demoTables.map((table) => ({ ...table, sheet: table.name }));
  if (book === "nothing") return [];
  if (book === "no cars") return demo.map((table) => (table.name === "Cars" ? { ...table, rows: [] } : table));
  if (book.startsWith("unlike ")) return demo.map((table) => (table.name === "Cars" ? unlike({ ...table, rows: repeated(table.rows, Number(book.slice(7))) }) : table));
  return book === "demo" ? demo : demo.map((table) => (table.name === "Cars" ? { ...table, rows: repeated(table.rows, Number(book)) } : table));
}

/** Rows with names of their own, since a repeated name is a flag. */
function repeated(rows: TableContent["rows"], most: number): TableContent["rows"] {
  return Array.from({ length: most }, (_, index) => {
    const [name, ...rest] = rows[index % rows.length] ?? [];
    return [index < rows.length ? (name ?? "") : `${String(name)} (${Math.floor(index / rows.length) + 1})`, ...rest];
  });
}

function unlike(cars: TableContent): TableContent {
  return { ...cars, headings: [...cars.headings, "Pedal ratio"], rows: cars.rows.map((row, index) => [...row, 4 + index / 10_000]) };
}
