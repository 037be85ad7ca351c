/** A part of a table: which rows of it, and one column, or from one column to another; no columns means all. */
export interface TablePart {
  readonly rows: "all" | "headers" | "data" | "totals" | "this row";
  readonly columns?: readonly string[];
}

/**
 * Reads what stands between the brackets after a table's name: "", "#All", "Year", "[A]:[B]",
 * "[#Headers],[A]:[B]", "@", "@Year", "@[A]:[B]", "[#This Row],[Year]". Undefined when it is none of these.
 */
export function partOf(inside: string): TablePart | undefined {
  const text = inside.trim();
  if (text === "") return { rows: "data" };
  if (text.startsWith("@")) return thisRowPart(text.slice(1).trim());
  if (text.startsWith("#")) return keywordPart([text]);
  if (text.startsWith("[")) return bracketedPart(text);
  return { rows: "data", columns: [unescape(text)] };
}

/** Writes the part as it is typed: "Cars", "Cars[#Headers]", "Cars[@Year]", "Cars[[#All],[A]:[B]]". */
export function partText(table: string, { rows, columns }: TablePart): string {
  if (!columns) return wholeRows[rows](table);
  const [first = "", last] = columns.map(escape);
  const span = last === undefined ? `[${first}]` : `[${first}]:[${last}]`;
  if (rows === "data") return last === undefined ? `${table}[${first}]` : `${table}[${span}]`;
  if (rows === "this row") return last === undefined && isWord(first) ? `${table}[@${first}]` : `${table}[@${span}]`;
  return `${table}[[${keywords[rows]}],${span}]`;
}

/** The same part as files hold it: a bare name as "Cars[]", T[@Year] as "T[[#This Row],[Year]]". */
export function partFileText(table: string, part: TablePart): string {
  if (part.rows === "data" && !part.columns) return `${table}[]`;
  if (part.rows !== "this row") return partText(table, part);
  if (!part.columns) return `${table}[#This Row]`;
  const span = part.columns.map((name) => `[${escape(name)}]`).join(":");
  return `${table}[[#This Row],${span}]`;
}

/** Position of the column that a heading names; -1 when the heading is blank or stands twice. */
export function namedPart(headings: readonly string[], name: string): number {
  const same = (heading: string): boolean => heading.trim().toLowerCase() === name.trim().toLowerCase();
  if (name.trim() === "" || headings.filter(same).length !== 1) return -1;
  return headings.findIndex(same);
}

const keywords = { all: "#All", headers: "#Headers", data: "#Data", totals: "#Totals", "this row": "#This Row" } as const;

const wholeRows: Readonly<Record<TablePart["rows"], (table: string) => string>> = {
  all: (table) => `${table}[#All]`,
  headers: (table) => `${table}[#Headers]`,
  data: (table) => table,
  totals: (table) => `${table}[#Totals]`,
  "this row": (table) => `${table}[@]`,
};

function thisRowPart(text: string): TablePart | undefined {
  if (text === "") return { rows: "this row" };
  if (!text.startsWith("[")) return { rows: "this row", columns: [unescape(text)] };
  const part = bracketedPart(text);
  return part?.rows === "data" && part.columns ? { ...part, rows: "this row" } : undefined;
}

function bracketedPart(text: string): TablePart | undefined {
  const items = bracketedItems(text);
  if (!items) return undefined;
  const special = items.filter(({ raw }) => raw.startsWith("#"));
  const columns = items.filter(({ raw }) => !raw.startsWith("#"));
  const rows = special.length === 0 ? ({ rows: "data" } as const) : keywordPart(special.map(({ raw }) => raw));
  const joined = columns.length < 2 || (columns.length === 2 && columns[1]?.separator === ":");
  if (!rows || !joined) return undefined;
  return columns.length === 0 ? rows : { ...rows, columns: columns.map(({ raw }) => unescape(raw)) };
}

/** "[#All],[A]:[B]" as its items with what stands before each. */
function bracketedItems(text: string): readonly { readonly raw: string; readonly separator: string }[] | undefined {
  const item = /\s*([,:]?)\s*\[((?:[^'[\]]|'.)*)\]\s*/suy;
  const items: { raw: string; separator: string }[] = [];
  while (item.lastIndex < text.length) {
    const found = item.exec(text);
    if (!found || (found[1] === "") !== (items.length === 0)) return undefined;
    items.push({ raw: (found[2] ?? "").trim(), separator: found[1] ?? "" });
  }
  return items;
}

/** One keyword, or the two pairs Excel allows: headers with data, data with totals. */
function keywordPart(texts: readonly string[]): TablePart | undefined {
  const found = texts.map((text) => text.toLowerCase().replace(/\s+/g, " ").trim()).sort().join(" ");
  const rows = ({
    "#all": "all", "#headers": "headers", "#data": "data", "#totals": "totals", "#this row": "this row",
    "#data #headers": "all", "#data #totals": "data",
  } as const)[found as "#all"] as TablePart["rows"] | undefined;
  return rows && { rows };
}

const unescape = (text: string): string => text.replace(/'(.)/gsu, "$1");
const escape = (text: string): string => text.replace(/['[\]#]/g, "'$&").replace(/^@/, "'@");
const isWord = (text: string): boolean => /^[\p{L}_][\p{L}\p{N}_.]*$/u.test(text);
