/** Merged cells and lists to choose from, as a worksheet part says them. */
import { type Area, areaAddress, parseArea } from "../address";
import { type CellArea, type ChoiceList, type DocumentSheet } from "../document";
import { listWarning } from "../new-table";
import { xmlText } from "./xml-text";
import { childNamed, childrenNamed, type XmlElement } from "./xml-tree";

export const mergesXml = ({ merges = [] }: DocumentSheet): string =>
  merges.length === 0 ? "" : `<mergeCells count="${String(merges.length)}">${merges.map((area) => `<mergeCell ref="${rangeText(area)}"/>`).join("")}</mergeCells>`;

export const readMerges = (sheet: XmlElement): readonly CellArea[] =>
  childrenNamed(childNamed(sheet, "mergeCells"), "mergeCell").flatMap(({ attributes }) => areasOf(attributes["ref"]));

/** Lists that warn of another text and let it pass. */
export function listsXml({ lists = [] }: DocumentSheet): string {
  const rules = lists.map(({ area, values }) =>
    `<dataValidation type="list" errorStyle="warning" allowBlank="1" showErrorMessage="1" errorTitle="${listWarning.title}" ` +
    `error="${xmlText(listWarning.message)}" sqref="${rangeText(area)}"><formula1>${xmlText(`"${values.join(",").replaceAll('"', '""')}"`)}</formula1></dataValidation>`);
  return rules.length === 0 ? "" : `<dataValidations count="${String(rules.length)}">${rules.join("")}</dataValidations>`;
}

/** Lists between quotes; `hasMore` when the sheet has other limits on what may be typed, or lists that let nothing else pass. */
export function readLists(sheet: XmlElement): { readonly lists: readonly ChoiceList[]; readonly hasMore: boolean } {
  const rules = childrenNamed(childNamed(sheet, "dataValidations"), "dataValidation");
  const read = rules.map((rule): ChoiceList[] => {
    const values = /^"((?:[^"]|"")*)"$/.exec(childNamed(rule, "formula1")?.text.trim() ?? "")?.[1];
    const { type, sqref, errorStyle } = rule.attributes;
    if (type !== "list" || values === undefined || errorStyle !== "warning") return [];
    return areasOf(sqref).map((area) => ({ area, values: values.replaceAll('""', '"').split(",").map((value) => value.trim()) }));
  });
  return { lists: read.flat(), hasMore: read.some((lists) => lists.length === 0) };
}

const rangeText = ({ row, column, rows, columns }: CellArea): string => areaAddress({ firstRow: row, firstColumn: column, rows, columns });

const areasOf = (ranges: string | undefined): readonly CellArea[] =>
  (ranges ?? "").split(/\s+/).flatMap((range) => {
    const area: Area | undefined = parseArea(range);
    return area ? [{ row: area.firstRow, column: area.firstColumn, rows: area.rows, columns: area.columns }] : [];
  });
