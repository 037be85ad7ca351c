/**
 * The one entry of the add-in: worksheet functions and panel share its module state, and so the cache of catalogues.
 * The functions are there at once, since cells wait for them; the panel is a chunk of its own and comes after.
 */
import "../functions/functions";

void Office.onReady(async ({ host }) => {
  const place = document.getElementById("panel");
  if (!place || host !== Office.HostType.Excel) return;
  const { showPanelInExcel } = await import(/* webpackChunkName: "panel" */ "./excel-panel");
  showPanelInExcel(place);
});
