/** How every adapter prints what a PageSetup says. */

/** Inches. */
export const margins = { left: 0.5, right: 0.5, top: 0.6, bottom: 0.7, header: 0.3, footer: 0.3 } as const;

/** The text in the codes of a footer, where "&" begins one. */
export const footerText = (footer: string): string => footer.replaceAll("&", "&&");

/** At the right of every foot. */
export const pageNumber = "Page &P of &N";
