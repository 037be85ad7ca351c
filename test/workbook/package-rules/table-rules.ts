import { all, block, child, children, overlap, overlapping, repeated, type Package, type Part } from "./package";
import { orderProblems } from "./rules";

/** Part 1, 18.5.1.2 and 18.5.1.3: ids and names that differ, one heading cell a column that shows its name, room of its own. */
export function tableProblems(book: Package): readonly string[] {
  const tables = book.parts("xl/tables/").map(({ xml }) => xml);
  const names = tables.map((table) => (table.getAttribute("displayName") ?? "").toLowerCase());
  const defined = all(book.xml("xl/workbook.xml"), "definedName").map((name) => (name.getAttribute("name") ?? "").toLowerCase());
  return [
    ...repeated(tables.map((table) => table.getAttribute("id") ?? "")).map((id) => `Two tables have the id ${id}.`),
    ...repeated([...names, ...defined.filter((name) => !name.startsWith("_xlnm."))]).map((name) => `The name ${name} stands for two things.`),
    ...book.parts("xl/worksheets/").flatMap((sheet) => onSheet(book, sheet)),
  ];
}

function onSheet(book: Package, { path, xml }: Part): readonly string[] {
  const links = book.links(path);
  const counted = child(xml, "tableParts")?.getAttribute("count") ?? "0";
  const tables = all(xml, "tablePart").flatMap((part) => {
    const id = [...part.attributes].find(({ localName }) => localName === "id")?.value ?? "";
    const target = links.get(id);
    return target && book.files[target.target] ? [book.xml(target.target)] : [];
  });
  const placed = tables.flatMap((table) => {
    const area = block(table.getAttribute("ref") ?? "");
    return area ? [{ name: table.getAttribute("displayName") ?? "", block: area }] : [];
  });
  const merged = all(xml, "mergeCell").flatMap((each) => block(each.getAttribute("ref") ?? "") ?? []);
  return [
    ...(counted === String(tables.length) ? [] : [`${path}: the tables are miscounted.`]),
    ...tables.flatMap((table) => tableItself(book, xml, table)),
    ...overlapping(placed).map(([a, b]) => `${path}: the tables ${a.name} and ${b.name} overlap.`),
    ...placed.filter((table) => merged.some((area) => overlap(area, table.block))).map(({ name }) => `${path}: merged cells reach into the table ${name}.`),
  ];
}

function tableItself(book: Package, sheet: Element, table: Element): readonly string[] {
  const name = table.getAttribute("displayName") ?? "";
  const range = table.getAttribute("ref") ?? "";
  const area = block(range);
  const columns = all(table, "tableColumn").map((column) => column.getAttribute("name") ?? "");
  const shown = area ? headings(book, sheet, area) : [];
  return [
    ...orderProblems(`Table ${name}`, table, ["autoFilter", "sortState", "tableColumns", "tableStyleInfo", "extLst"]),
    ...(/^[\p{L}_\\][\p{L}\p{N}_.\\]{0,254}$/u.test(name) && !/^[a-z]{1,3}[1-9]\d*$/i.test(name) && name === table.getAttribute("name") ? [] : [`No table may be named "${name}".`]),
    ...(area && area.bottom > area.top && area.right - area.left + 1 === columns.length ? [] : [`Table ${name} has ${columns.length} columns in ${range}.`]),
    ...(child(table, "autoFilter")?.getAttribute("ref") === range ? [] : [`The filter of table ${name} is not where the table is.`]),
    ...repeated(columns.map((column) => column.toLowerCase())).map((column) => `Table ${name} has two columns ${column}.`),
    ...repeated(all(table, "tableColumn").map((column) => column.getAttribute("id") ?? "")).map((id) => `Table ${name} has two columns with the id ${id}.`),
    ...columns.filter((column, index) => column === "" || shown[index] !== column).map((column) => `The heading cell of "${column}" in table ${name} does not show that.`),
  ];
}

/** The texts of the heading cells; a heading that is a number or missing is none. */
function headings(book: Package, sheet: Element, { top, left, right }: { readonly top: number; readonly left: number; readonly right: number }): readonly (string | undefined)[] {
  const texts = children(book.xml("xl/sharedStrings.xml")).map((text) => text.textContent ?? "");
  const cells = new Map(all(sheet, "c").map((cell) => [cell.getAttribute("r") ?? "", cell]));
  return Array.from({ length: right - left + 1 }, (_, index) => {
    const cell = cells.get(`${letters(left + index)}${top + 1}`);
    return cell?.getAttribute("t") === "s" ? texts[Number(child(cell, "v")?.textContent)] : undefined;
  });
}

const letters = (column: number): string => (column < 26 ? "" : letters(Math.floor(column / 26) - 1)) + String.fromCharCode(65 + (column % 26));
