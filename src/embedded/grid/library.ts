/**
 * The grid library, handed in by whoever starts: the page has it from its own unmodified script,
 * programs from the package. Only this folder knows its types and commands.
 */
export type GridLibrary = typeof import("@odoo/o-spreadsheet");
export type GridModel = InstanceType<GridLibrary["Model"]>;
