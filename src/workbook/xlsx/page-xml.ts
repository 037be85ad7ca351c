/** How a sheet prints, as a worksheet part says it. */
import { sheetPrefix } from "../address";
import { type DocumentSheet, type PageSetup } from "../document";
import { footerText, margins, pageNumber } from "../page-setup";
import { xmlText } from "./xml-text";
import { childNamed, childrenNamed, isOn, type XmlElement } from "./xml-tree";

/** Goes before everything else of a worksheet: that the page set-up fits and does not scale. */
export const fitXml = ({ page }: DocumentSheet): string => (page?.fitWide ? '<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>' : "");

/** Margins in inches, direction, scale and foot of the page. Nothing when the sheet says nothing. */
export function pageXml({ page }: DocumentSheet): string {
  if (!page) return "";
  const { landscape, fitWide, footer, breaks = [] } = page;
  const direction = ` orientation="${landscape ? "landscape" : "portrait"}"`;
  return (
    `<pageMargins${Object.entries(margins).map(([side, inches]) => ` ${side}="${String(inches)}"`).join("")}/>` +
    `<pageSetup${direction}${fitWide ? ' fitToWidth="1" fitToHeight="0"' : ""}/>` +
    (footer === undefined ? "" : `<headerFooter><oddFooter>${xmlText(footerCode(footer))}</oddFooter></headerFooter>`) +
    breaksXml(breaks)
  );
}

/** A break is told by the row above it, counted from 1, which is the row below it counted from 0. Source: ECMA-376 part 1, 18.3.1.3. */
function breaksXml(breaks: readonly number[]): string {
  const count = String(breaks.length);
  return breaks.length === 0 ? "" : `<rowBreaks count="${count}" manualBreakCount="${count}">${breaks.map((row) => `<brk id="${String(row)}" max="16383" man="1"/>`).join("")}</rowBreaks>`;
}

const footerCode = (footer: string): string => `&L${footerText(footer)}&R${pageNumber}`;

/** The defined name under which a file keeps the rows that every page repeats. */
export const titleRowsName = ({ name, page }: DocumentSheet, number: number): string =>
  page?.titleRows ? `<definedName name="_xlnm.Print_Titles" localSheetId="${String(number)}">${xmlText(`${sheetPrefix(name)}$1:$${String(page.titleRows)}`)}</definedName>` : "";

/** @param titles what the sheet's _xlnm.Print_Titles stands for, if it has one */
export function readPage(sheet: XmlElement, titles: string | undefined): PageSetup | undefined {
  const fitWide = isOn(childNamed(childNamed(sheet, "sheetPr"), "pageSetUpPr")?.attributes["fitToPage"]);
  const landscape = childNamed(sheet, "pageSetup")?.attributes["orientation"] === "landscape";
  const titleRows = Number(/\$1:\$(\d+)$/.exec(titles ?? "")?.[1] ?? 0);
  const footer = readFooter(childNamed(childNamed(sheet, "headerFooter"), "oddFooter")?.text);
  const breaks = childrenNamed(childNamed(sheet, "rowBreaks"), "brk").filter(({ attributes }) => isOn(attributes["man"])).map(({ attributes }) => Number(attributes["id"]));
  const page = { ...(landscape ? { landscape } : {}), ...(fitWide ? { fitWide } : {}), ...(titleRows > 0 ? { titleRows } : {}), ...(footer === undefined ? {} : { footer }), ...(breaks.length > 0 ? { breaks } : {}) };
  return Object.keys(page).length > 0 ? page : undefined;
}

/** The left part, if it is a text without codes of its own. */
function readFooter(code: string | undefined): string | undefined {
  const left = /^&L((?:[^&]|&&)*)(?:&[CR]|$)/s.exec(code ?? "")?.[1];
  return left?.replaceAll("&&", "&");
}
