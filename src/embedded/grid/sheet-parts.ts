/** Merged cells, pictures and lists to choose from, in the words of the grid and in ours. */
import { areaAddress } from "../../workbook/address";
import { type CellArea, type ChoiceList, type DocumentSheet, type SheetPicture } from "../../workbook/document";
import { type GridModel } from "./library";

export interface Zone {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export const zoneOf = ({ row, column, rows, columns }: CellArea): Zone => ({ left: column, top: row, right: column + columns - 1, bottom: row + rows - 1 });

const areaOf = ({ left, top, right, bottom }: Zone): CellArea => ({ row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 });

export const rangeText = ({ row, column, rows, columns }: CellArea): string => areaAddress({ firstRow: row, firstColumn: column, rows, columns });

/** The picture's place in the grid; its text for those who do not see it travels with the picture. */
export const figure = ({ png, alt, row, column, width, height }: SheetPicture) => ({
  col: column,
  row,
  offset: { x: 0, y: 0 },
  size: { width, height },
  definition: { path: `${pngAddress}${png}`, mimetype: "image/png", size: { width, height }, alt },
});

const pngAddress = "data:image/png;base64,";

/** The grid marks every cell that has an arrow to open its list, blank ones too; so the list shows while typing only. */
export const choiceRule = (id: string, { values }: ChoiceList) => ({
  id,
  criterion: { type: "isValueInList", values: [...values], displayStyle: "plainText" } as const,
  isBlocking: false,
});

/** What the grid holds of a sheet beside its cells. */
export function sheetParts({ getters }: GridModel, sheetId: string): Pick<DocumentSheet, "merges" | "pictures" | "lists"> {
  const merges = getters.getMerges(sheetId).map(areaOf);
  const pictures = getters.getFigures(sheetId).filter(({ tag }) => tag === "image").map((each): SheetPicture => {
    const { path, alt = "" } = getters.getImage(each.id) as { readonly path: string; readonly alt?: string };
    return { png: path.slice(pngAddress.length), alt, row: each.row, column: each.col, width: each.width, height: each.height };
  });
  const lists = getters.getDataValidationRules(sheetId).flatMap(({ criterion, ranges }): ChoiceList[] =>
    criterion.type === "isValueInList" ? ranges.map(({ zone }) => ({ area: areaOf(zone), values: criterion.values })) : []);
  return { ...(merges.length > 0 ? { merges } : {}), ...(pictures.length > 0 ? { pictures } : {}), ...(lists.length > 0 ? { lists } : {}) };
}
