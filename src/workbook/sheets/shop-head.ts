/** The head of a printed sheet: the shop at the left, what the sheet is at the right, facts under both. */
import type { Settings } from "../../core/settings";
import type { CellValue } from "../document";
import type { SheetDraft } from "./sheet-draft";
import { LABEL, RIGHT, SHOP, STRONG, TITLE } from "./sheet-looks";

export interface ShopHead {
  readonly title: string;
  /** Label and fact. */
  readonly left: readonly (readonly [string, CellValue])[];
  readonly right: readonly (readonly [string, CellValue])[];
}

/** Where the facts of the right side stand: the column of their labels, and from where to where they stand themselves. */
export interface HeadPlaces {
  /** Column of the facts at the left; their labels stand before it. */
  readonly left: number;
  readonly label: number;
  readonly fact: number;
  readonly columns: number;
}

export function addShopHead(draft: SheetDraft, { shopName, shopAddress }: Settings, { title, left, right }: ShopHead, places: HeadPlaces): void {
  const { label, fact, columns } = places;
  const wide = [fact, columns - fact] as const;
  const cells = (values: Readonly<Record<number, CellValue>>): CellValue[] => Array.from({ length: columns }, (_, column) => values[column] ?? "");
  draft.row(cells({ 0: title }), TITLE);
  if (shopName !== "") draft.row(cells({ 0: shopName }), SHOP);
  if (shopAddress !== "") draft.row(cells({ 0: shopAddress }));
  draft.row([]);
  for (let index = 0; index < Math.max(left.length, right.length); index += 1) {
    const [[name, value], [rightName, rightValue]] = [left[index] ?? ["", ""], right[index] ?? ["", ""]];
    const looks = cells({}).map((_, column) => (column === places.left ? STRONG : column === 0 || column === label ? LABEL : column === fact ? RIGHT : undefined));
    draft.row(cells({ 0: name, [places.left]: value, [label]: rightName, [fact]: rightValue }), looks, wide[1] > 1 ? [wide] : []);
  }
}
