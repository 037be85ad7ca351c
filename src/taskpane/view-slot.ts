/** The place of one view in the panel: fetches the view when it is first looked at, and keeps its faults from the others. */
import type { WorkbookReading } from "../workbook/workbook-reports";
import { element } from "./element";
import { failureNotice } from "./failure";
import type { ViewEntry } from "./places";
import type { View, ViewActions } from "./view";

export interface ViewSlot {
  readonly id: string;
  readonly name: string;
  readonly content: HTMLElement;
  show(reading: WorkbookReading): void;
  /** Tells of a fault that came up while the view was used. */
  fail(error: unknown): void;
}

export function viewSlot({ id, name, load }: ViewEntry, actions: ViewActions): ViewSlot {
  const [fault, body] = [element("div", {}), element("div", {})];
  const content = element("div", { class: "slot" }, fault, body);
  const state: { view?: View; reading?: WorkbookReading; loading: boolean } = { loading: false };
  const fail = (error: unknown, heading = `${name} stopped on a fault of Plumbline`): void => {
    fault.replaceChildren(failureNotice({ error, heading, advice: "The other views go on, and nothing in the workbook was changed by this. Try again; if it fails again, send the details below to whoever looks after Plumbline.", retry: draw }));
  };
  const draw = (): void => {
    fault.replaceChildren();
    if (!state.view) void fetchView();
    else if (state.reading) attempt(() => state.view?.show(state.reading as WorkbookReading), fail);
  };
  const fetchView = async (): Promise<void> => {
    if (state.loading) return;
    state.loading = true;
    try {
      const coming = load();
      if (coming instanceof Promise) body.replaceChildren(loadingLine(name));
      content.classList.toggle("slot--loading", coming instanceof Promise);
      state.view = (await coming)(actions);
      body.replaceChildren(state.view.content);
      draw();
    } catch (error) {
      body.replaceChildren();
      fail(error, `${name} could not be opened`);
    } finally {
      state.loading = false;
      content.classList.remove("slot--loading");
    }
  };
  return { id, name, content, fail, show: (reading) => { state.reading = reading; draw(); } };
}

const loadingLine = (name: string): HTMLElement => element("p", { class: "slot__loading", role: "status" }, `Opening ${name} …`);

function attempt(work: () => void, failed: (error: unknown) => void): void {
  try {
    work();
  } catch (error) {
    failed(error);
  }
}
