/** The looks that our printed sheets share: black on white, one grey, and red for a hold alone, so that a plain printer will do. */
import type { CellStyle } from "../document";

export const TITLE: CellStyle = { bold: true, size: 24 };
export const SHOP: CellStyle = { bold: true, size: 14 };
export const LABEL: CellStyle = { colour: "#50595d" };
export const STRONG: CellStyle = { bold: true };
export const TEXT: CellStyle = { wrap: true };
export const RIGHT: CellStyle = { align: "right" };
export const HEADING: CellStyle = { bold: true, fill: "#e9ece6", top: true, bottom: true };
export const SMALL: CellStyle = { size: 9, colour: "#50595d", wrap: true };
export const BANNER: CellStyle = { bold: true, size: 18, colour: "#ffffff", fill: "#96280f" };
export const REASON: CellStyle = { wrap: true, fill: "#fbeae5" };
export const RULE: CellStyle = { top: true };
