/** Whether Excel is light or dark, which need not be what the system is. */

/** @returns undefined where Excel does not say; it tells of no change either, so it is asked again when the pane is come back to */
export function officeTheme(): "light" | "dark" | undefined {
  // Older Excels and Excel in a browser may lack what the types promise.
  const theme = (Office.context as Partial<Pick<Office.Context, "officeTheme">>).officeTheme as Partial<Office.OfficeTheme> | undefined;
  const light = luminance(theme?.bodyBackgroundColor ?? "");
  return light === undefined ? undefined : light < AS_FAR_FROM_BLACK_AS_FROM_WHITE ? "dark" : "light";
}

/** Where text in black and in white have the same contrast: (1.05 × 0.05)^½ − 0.05 (WCAG 2.2, "contrast ratio"). */
const AS_FAR_FROM_BLACK_AS_FROM_WHITE = Math.sqrt(1.05 * 0.05) - 0.05;

/** Relative luminance of #rrggbb (WCAG 2.2, "relative luminance"); undefined for anything else. */
function luminance(color: string): number | undefined {
  const channels = /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(color.trim());
  if (!channels) return undefined;
  const [red = 0, green = 0, blue = 0] = channels.slice(1).map((hex) => linear(parseInt(hex, 16) / 255));
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

const linear = (channel: number): number => (channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4);
