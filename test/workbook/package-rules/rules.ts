/**
 * Rules of ECMA-376 part 1 (5th edition) and part 2 that make a spreadsheet program call a workbook damaged when they are broken.
 * Section numbers and element orders are from memory of the standard's text; LibreOffice and another library read the same files.
 */
import { all, below, block, child, children, type Package, type Part, repeated } from "./package";
import { sheetProblems } from "./sheet-rules";
import { styleProblems } from "./style-rules";
import { tableProblems } from "./table-rules";

/** What is wrong with a package, each as a sentence. */
export const packageProblems = (book: Package): readonly string[] => [
  ...contentTypes(book),
  ...relationships(book),
  ...workbookPart(book),
  ...styleProblems(book),
  ...book.parts("xl/worksheets/").flatMap((part) => sheetProblems(book, part)),
  ...tableProblems(book),
  ...drawings(book),
];

const mainType = "application/vnd.openxmlformats-officedocument.spreadsheetml.";

/** The content type each kind of part must have (part 1, 12.3 and 15). */
const typesByFolder: readonly (readonly [RegExp, string])[] = [
  [/^xl\/workbook\.xml$/, `${mainType}sheet.main+xml`],
  [/^xl\/worksheets\/[^/]+\.xml$/, `${mainType}worksheet+xml`],
  [/^xl\/tables\//, `${mainType}table+xml`],
  [/^xl\/styles\.xml$/, `${mainType}styles+xml`],
  [/^xl\/sharedStrings\.xml$/, `${mainType}sharedStrings+xml`],
  [/^xl\/metadata\.xml$/, `${mainType}sheetMetadata+xml`],
  [/^xl\/drawings\/[^/]+\.xml$/, "application/vnd.openxmlformats-officedocument.drawing+xml"],
  [/\.png$/, "image/png"],
  [/\.rels$/, "application/vnd.openxmlformats-package.relationships+xml"],
];

/** Part 2, 10.1.2: every part has one content type, by its name or by its ending. */
function contentTypes(book: Package): readonly string[] {
  const types = book.xml("[Content_Types].xml");
  const attribute = (name: string, key: string) => new Map(all(types, name).map((each) => [each.getAttribute(key) ?? "", each.getAttribute("ContentType") ?? ""]));
  const [defaults, overrides] = [attribute("Default", "Extension"), attribute("Override", "PartName")];
  const paths = Object.keys(book.files).filter((path) => path !== "[Content_Types].xml");
  const typeOf = (path: string): string | undefined => overrides.get(`/${path}`) ?? defaults.get(path.slice(path.lastIndexOf(".") + 1));
  return [
    ...paths.filter((path) => typeOf(path) === undefined).map((path) => `${path} has no content type.`),
    ...[...overrides.keys()].filter((path) => !book.files[path.slice(1)]).map((path) => `The content type of ${path} is for no part.`),
    ...paths.flatMap((path) => {
      const wanted = typesByFolder.find(([folder]) => folder.test(path))?.[1];
      return wanted === undefined || typeOf(path) === wanted ? [] : [`${path} has the content type ${String(typeOf(path))}.`];
    }),
  ];
}

/** Part 2, 9.3: every link leads to a part, every part is led to, ids differ, and every r:id is a link of its part. */
function relationships(book: Package): readonly string[] {
  const rels = Object.keys(book.files).filter((path) => path.endsWith(".rels"));
  const sources = rels.map((path) => path.replace("_rels/", "").replace(/\.rels$/, ""));
  const targets = new Set(sources.flatMap((source) => [...book.links(source).values()].map(({ target }) => target)));
  const parts = Object.keys(book.files).filter((path) => !path.endsWith(".rels") && path !== "[Content_Types].xml");
  return [
    ...sources.flatMap((source) => [...book.links(source)].filter(([, { target }]) => !book.files[target]).map(([id, { target }]) => `Link ${id} of ${source || "the package"} leads to ${target}, which is not there.`)),
    ...rels.flatMap((path) => repeated(all(book.xml(path), "Relationship").map((link) => link.getAttribute("Id") ?? "")).map((id) => `Link ${id} of ${path} is there twice.`)),
    ...parts.filter((path) => !targets.has(path)).map((path) => `No link leads to ${path}.`),
    ...parts.filter((path) => path.endsWith(".xml")).flatMap((path) => usedLinks(book.xml(path)).filter((id) => !book.links(path).has(id)).map((id) => `${path} uses link ${id}, which it does not have.`)),
  ];
}

const usedLinks = (root: Element): readonly string[] =>
  [root, ...below(root)].flatMap((element) => [...element.attributes].filter(({ namespaceURI }) => namespaceURI?.endsWith("/officeDocument/2006/relationships")).map(({ value }) => value));

const workbookOrder = ["fileVersion", "workbookPr", "bookViews", "sheets", "definedNames", "calcPr"];

/** Part 1, 18.2.27 (order), 18.2.19 (sheets), 18.2.5 (names). */
function workbookPart(book: Package): readonly string[] {
  const workbook = book.xml("xl/workbook.xml");
  const sheets = children(child(workbook, "sheets"));
  const names = sheets.map((sheet) => sheet.getAttribute("name") ?? "");
  const visible = sheets.filter((sheet) => !sheet.hasAttribute("state"));
  const active = Number(all(workbook, "workbookView")[0]?.getAttribute("activeTab") ?? 0);
  const defined = children(child(workbook, "definedNames"));
  const keys = defined.map((name) => `${(name.getAttribute("name") ?? "").toLowerCase()} of ${name.getAttribute("localSheetId") ?? "all"}`);
  return [
    ...orderProblems("xl/workbook.xml", workbook, workbookOrder),
    ...names.filter((name) => name === "" || name.length > 31 || /[[\]:*?/\\]|^'|'$/.test(name)).map((name) => `No sheet may be named "${name}".`),
    ...repeated(names.map((name) => name.toLowerCase())).map((name) => `Two sheets are named ${name}.`),
    ...repeated(sheets.map((sheet) => sheet.getAttribute("sheetId") ?? "")).map((id) => `Two sheets have the id ${id}.`),
    ...(visible.length === 0 ? ["No sheet is in sight."] : visible.includes(sheets[active] as Element) ? [] : ["The sheet in front is hidden or not there."]),
    ...repeated(keys).map((key) => `Two names are ${key}.`),
    ...defined.filter((name) => Number(name.getAttribute("localSheetId") ?? 0) >= sheets.length).map((name) => `${name.getAttribute("name") ?? ""} is of a sheet that is not there.`),
    ...defined.filter((name) => name.textContent === "").map((name) => `${name.getAttribute("name") ?? ""} stands for nothing.`),
  ];
}

/** Children must come in the schema's order, and no others may. */
export function orderProblems(where: string, element: Element, order: readonly string[]): readonly string[] {
  const names = children(element).map(({ localName }) => localName);
  const unknown = names.filter((name) => !order.includes(name)).map((name) => `${where} may not hold ${name}.`);
  const places = names.map((name) => order.indexOf(name));
  const late = names.filter((_, index) => index > 0 && (places[index] ?? 0) < (places[index - 1] ?? 0)).map((name) => `${where}: ${name} comes too late.`);
  return [...unknown, ...late];
}

/** Part 1, 20.5.2: anchors, ids that differ, pictures that are PNG. */
function drawings(book: Package): readonly string[] {
  return book.parts("xl/drawings/").flatMap(({ path, xml }: Part) => {
    const ids = all(xml, "cNvPr").map((each) => each.getAttribute("id") ?? "");
    const pictures = [...book.links(path).values()].filter(({ kind }) => kind === "image").map(({ target }) => target);
    return [
      ...children(xml).flatMap((anchor) => orderProblems(path, anchor, ["from", "ext", "pic", "clientData"])),
      ...all(xml, "pic").flatMap((picture) => orderProblems(path, picture, ["nvPicPr", "blipFill", "spPr"])),
      ...repeated(ids).map((id) => `${path} has two pictures with the id ${id}.`),
      ...all(xml, "cNvPr").filter((each) => each.getAttribute("descr") === null).map(() => `A picture of ${path} has no words for who does not see it.`),
      ...all(xml, "ext").filter((each) => each.hasAttribute("cx") && !(Number(each.getAttribute("cx")) > 0 && Number(each.getAttribute("cy")) > 0)).map(() => `A picture of ${path} has no size.`),
      ...pictures.filter((target) => [...(book.files[target] ?? [])].slice(0, 8).join() !== "137,80,78,71,13,10,26,10").map((target) => `${target} is no PNG.`),
    ];
  });
}

export const isRange = (range: string): boolean => block(range) !== undefined;
