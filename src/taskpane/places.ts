/** The ten views by the place where they are used: the whole shop, the car on the telephone, the stores, and the panel itself. */
import { carsView } from "./cars-view";
import { drawingView } from "./drawing-view";
import { flagsView } from "./flags-view";
import { questionsView } from "./questions-view";
import type { MakeView } from "./view";

/** A view of the panel; its maker may come by a dynamic import, so that a view that is not looked at costs nothing. */
export interface ViewEntry {
  readonly id: string;
  readonly name: string;
  readonly load: () => MakeView | Promise<MakeView>;
}

export interface Place {
  readonly id: string;
  readonly name: string;
  readonly views: readonly ViewEntry[];
}

/** In the order of the tabs. One more view is one more line. */
export const places: readonly Place[] = [
  { id: "all", name: "All cars", views: [
    { id: "cars", name: "Cars", load: () => carsView },
    { id: "flags", name: "Flags", load: () => flagsView },
  ] },
  { id: "one", name: "This car", views: [
    { id: "questions", name: "Questions", load: () => questionsView },
    { id: "drawing", name: "Drawing", load: () => drawingView },
    { id: "balance", name: "Balance", load: async () => (await import("./balance-view")).balanceView },
    { id: "quote", name: "Quote", load: async () => (await import("./quote/quote-view")).quoteView },
  ] },
  { id: "material", name: "Material", views: [
    { id: "tube", name: "Tube", load: async () => (await import(/* webpackChunkName: "tube-view" */ "./tube-view")).tubeView },
    { id: "stock", name: "Stock", load: () => import(/* webpackChunkName: "stock-view" */ "./stock/stock-view").then(({ stockView }) => stockView) },
  ] },
  { id: "set-up", name: "Setup", views: [
    { id: "settings", name: "Settings", load: async () => (await import(/* webpackChunkName: "settings" */ "./settings/settings-view")).settingsView },
    { id: "functions", name: "Functions", load: async () => (await import(/* webpackChunkName: "functions" */ "./functions/functions-view")).functionsView },
  ] },
];
