/** Which units a new workbook is offered first, by the reader's region. */

/** Everybody else measures in millimetres. @source common practice, no source */
const INCH_REGIONS: readonly string[] = ["US", "LR", "MM"];

/**
 * A tag that names no region takes the one where most readers of its language are: `de` is Germany, `en` the United States.
 * @param locale a language tag; an unknown one keeps inches, as the demo and most cars of this trade are in inches
 */
export function unitsOffered(locale: string | undefined): "us" | "metric" {
  const region = locale === undefined ? undefined : regionOf(locale);
  return region === undefined || INCH_REGIONS.includes(region) ? "us" : "metric";
}

function regionOf(locale: string): string | undefined {
  try {
    return new Intl.Locale(locale).maximize().region;
  } catch {
    return undefined; // not of the form of a language tag
  }
}
