/** The one entry of the add-in: worksheet functions and panel share its module state, and so the cache of catalogues. */
import "../functions/functions";
import { excelPort } from "../workbook/excel";
import { mountPanel } from "./panel";
import stylesheet from "./panel.css";

void Office.onReady(({ host }) => {
  const place = document.getElementById("panel");
  if (place && host === Office.HostType.Excel) mountPanel(place, excelPort(), { stylesheet });
});
