/** Everything the worksheet functions about stock need, behind one door: import it with import(), as the distributions come with it. */
export { demandColumns, demandTable } from "./demand-table";
export { forecastColumns, forecastTable } from "./forecast-table";
export { reorderColumns, reorderTable } from "./reorder-table";
