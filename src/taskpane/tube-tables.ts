/** The tables of the Tube view: one a material, a size and wall a row, with what to buy once that is planned. */
import { sayTube, type Material } from "../core/tube";
import { boughtBy, sayLots, sayUnbought } from "../core/tubing";
import type { PlanOutcome } from "./bench/kept-plans";
import { element } from "./element";
import type { KeyedChild } from "./keyed-children";
import { tubeDrawing } from "./marks";
import type { TubeTotal } from "./tube-totals";
import { count, sayLength, sayNumber, sayWall, type Units } from "./words";

export interface ShownTotal {
  readonly total: TubeTotal;
  /** Undefined while it is planned. */
  readonly purchase: PlanOutcome | undefined;
}

export function tubeTables(totals: readonly ShownTotal[], units: Units): KeyedChild[] {
  const longest = Math.max(...totals.map(({ total: { cut } }) => cut));
  const materials = [...new Set(totals.map(({ total: { material } }) => material))];
  return materials.map((material) => {
    const those = totals.filter(({ total }) => total.material === material);
    return { key: material ?? "", content: JSON.stringify([units, longest, those]), make: () => tableOf(sayMaterial(material), those, { units, longest }) };
  });
}

const sayMaterial = (material: Material | undefined): string => (material ? material.charAt(0).toUpperCase() + material.slice(1) : "Material not stated");

interface Scale {
  readonly units: Units;
  readonly longest: number;
}

function tableOf(material: string, totals: readonly ShownTotal[], scale: Scale): HTMLElement {
  const heading = (text: string, kind = ""): HTMLElement => element("th", { scope: "col", class: kind }, text);
  return element("table", { class: "tube" },
    element("caption", {}, material),
    element("thead", {}, element("tr", {},
      heading("Tube"), heading("Cut", "number"), heading("Net", "number"), heading("Runs", "number"), heading("Cars", "number"), heading("To buy", "wide"), heading("Scrap", "number wide"))),
    ...totals.map((total) => rowsOf(total, scale)));
}

/** Two rows a size, so that 320 pixels hold the figures: the figures, then the drawing with what is estimated. */
function rowsOf(shown: ShownTotal, { units, longest }: Scale): HTMLElement {
  const { outsideDiameter, wall, cut, net, runs, cars, estimated } = shown.total;
  const { says, scrap } = purchaseOf(shown);
  const number = (text: string, kind = ""): HTMLElement => element("td", { class: `number ${kind}` }, text);
  return element("tbody", {},
    element("tr", {},
      element("th", { scope: "row" }, sayTube(outsideDiameter), element("span", { class: "tube__detail" }, ...(wall === undefined ? ["wall not known"] : ["wall ", element("span", { class: "unparted" }, sayWall(wall, units))]))),
      number(sayLength(cut, units), "tube__cut"), number(sayLength(net, units)), number(sayNumber(runs)), number(sayNumber(cars)),
      element("td", { class: "wide" }, says),
      number(scrap === undefined ? "" : sayLength(scrap, units), "wide")),
    element("tr", { class: "tube__second" }, element("td", { colspan: 5 }, tubeDrawing(cut / longest, estimated.net / net),
      element("span", { class: "tube__buy" }, `To buy: ${says}${scrap === undefined ? "" : `, scrap ${sayLength(scrap, units)}`}${says.endsWith("…") ? "" : "."}`), sayPreBent(shown.total), sayEstimated(shown.total, units))));
}

function purchaseOf({ total, purchase }: ShownTotal): { readonly says: string; readonly scrap?: TubeTotal["cut"] | undefined } {
  if (purchase === undefined) return { says: "being planned …" };
  if ("stopped" in purchase) return { says: "not planned, as you stopped it" };
  if ("fault" in purchase) return { says: `not planned, by a fault of Plumbline: ${purchase.fault}` };
  const { bought, scrap } = boughtBy(total, purchase.plan);
  if (bought) return { says: sayLots(bought), scrap };
  return { says: sayUnbought(total) };
}

/** @param preBent how many of the runs come bent, at least one */
export function sayRunsOfSets(preBent: number, runs: number): string {
  const straight = runs === 1 ? "The run is counted as straight tube" : `All ${count(runs, "run")} are counted as straight tube`;
  if (preBent === runs) return `${straight}; ${runs === 1 ? "it comes" : "all of them come"} bent in a set, so the bench below saws none.`;
  return `${straight}; ${sayNumber(preBent)} of them ${preBent === 1 ? "comes" : "come"} bent in a set, and the bench below saws the others only.`;
}

/** Said at the figure, since the bench below counts only what is sawn. */
function sayPreBent({ preBent, runs }: TubeTotal): HTMLElement | undefined {
  if (preBent === 0) return undefined;
  return element("span", { class: "tube__estimated" }, sayRunsOfSets(preBent, runs));
}

function sayEstimated({ estimated }: TubeTotal, units: Units): HTMLElement | undefined {
  if (estimated.runs === 0) return undefined;
  return element("span", { class: "tube__estimated" }, `${sayLength(estimated.net, units)} of the net is estimated, in ${count(estimated.runs, "run")}.`);
}
