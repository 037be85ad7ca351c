/** How cells look, in the words of the grid and in ours. */
import { type CellStyle } from "../../workbook/document";

/** What the grid keeps of a cell's look beside its number format and its borders. */
export interface GridStyle {
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly fontSize?: number;
  readonly fillColor?: string;
  readonly textColor?: string;
  readonly align?: string;
  readonly wrapping?: string;
  readonly verticalAlign?: string;
}

export interface GridBorder {
  readonly top?: unknown;
  readonly bottom?: unknown;
}

/** Undefined when the grid has nothing to keep. */
export function gridStyle({ bold, italic, size, fill, colour, align, wrap }: CellStyle): GridStyle | undefined {
  const style = {
    ...(bold ? { bold } : {}),
    ...(italic ? { italic } : {}),
    ...(size === undefined ? {} : { fontSize: size }),
    ...(fill === undefined ? {} : { fillColor: fill }),
    ...(colour === undefined ? {} : { textColor: colour }),
    ...(align === undefined ? {} : { align }),
    ...(wrap ? { wrapping: "wrap", verticalAlign: "top" } : {}),
  };
  return Object.keys(style).length > 0 ? style : undefined;
}

export function gridBorder({ top, bottom }: CellStyle): GridBorder | undefined {
  if (!top && !bottom) return undefined;
  return { ...(top ? { top: thinRule } : {}), ...(bottom ? { bottom: thinRule } : {}) };
}

const thinRule = { style: "thin", color: "#000000" };

export function lookOf(format: string | undefined, style: GridStyle = {}, border: GridBorder = {}): CellStyle {
  const { bold, italic, fontSize, fillColor, textColor, align, wrapping } = style;
  return {
    ...(format ? { format } : {}),
    ...(bold ? { bold } : {}),
    ...(italic ? { italic } : {}),
    ...(fontSize === undefined ? {} : { size: fontSize }),
    ...(fillColor ? { fill: fillColor.toLowerCase() } : {}),
    ...(textColor ? { colour: textColor.toLowerCase() } : {}),
    ...(isAlignment(align) ? { align } : {}),
    ...(wrapping === "wrap" ? { wrap: true } : {}),
    ...(border.top ? { top: true } : {}),
    ...(border.bottom ? { bottom: true } : {}),
  };
}

const isAlignment = (align: string | undefined): align is NonNullable<CellStyle["align"]> => align === "left" || align === "center" || align === "right";
