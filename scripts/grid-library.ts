import * as library from "@odoo/o-spreadsheet";

// The library reports its timings with console.debug, which Node prints on standard output among our answers.
console.debug = () => undefined;

/** The grid library for programs without a page. */
export const gridLibrary = library;
