/**
 * The one entry of the add-in: worksheet functions and panel share its module state, and so the cache of catalogues.
 * Only what registers the functions is in it; the parts of the program come after, those of the cars at once, as nearly every workbook asks for them.
 */
import { oncePerKey, programParts, whenLoaded } from "../functions/parts";

const loadPanel = () => import(/* webpackChunkName: "panel" */ "./excel-panel");

/** A workbook that was just opened has keys in its cells before anything has read its tables, and nobody need open the panel for that. */
const readCatalogue = oncePerKey(async () => {
  await Office.onReady();
  await (await loadPanel()).readCatalogueInExcel();
});

for (const { load, functions } of programParts) {
  for (const name of functions) CustomFunctions.associate(name, whenLoaded(name, load, readCatalogue));
}
// A cell that needs them says so if they do not come.
programParts[0]?.load().catch(() => undefined);

void Office.onReady(async ({ host }) => {
  const place = document.getElementById("panel");
  if (!place || host !== Office.HostType.Excel) return;
  (await loadPanel()).showPanelInExcel(place);
});
