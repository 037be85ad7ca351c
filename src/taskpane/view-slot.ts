/** The place of one view in the panel: fetches the view when it is first looked at, and keeps its faults from the others. */
import type { TablePlace } from "../workbook/port";
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
  /** The user went to a row of a table that is no car's. */
  stand(place: TablePlace): void;
  /** Tells of a fault that came up while the view was used, until the user tries again. */
  fail(error: unknown): void;
}

export function viewSlot({ id, name, load }: ViewEntry, actions: ViewActions): ViewSlot {
  const state: { view?: View; reading?: WorkbookReading; loading: boolean } = { loading: false };
  const body = element("div", {});
  const orTell = (work: () => void): void => { attempt(work, (error) => { faults.tell(error, `${name} stopped on a fault of Plumbline`); }); };
  const draw = (): void => {
    faults.clear();
    const { view, reading } = state;
    if (!view) void fetchView();
    else if (reading) orTell(() => { view.show(reading); });
  };
  const faults = faultPlace(draw);
  const content = element("div", { class: "slot" }, faults.content, body);
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
      faults.tell(error, `${name} could not be opened`);
    } finally {
      state.loading = false;
      content.classList.remove("slot--loading");
    }
  };
  const show = (reading: WorkbookReading): void => {
    state.reading = reading;
    draw();
  };
  return { id, name, content, show, stand: (place) => { orTell(() => { state.view?.stand?.(place); }); }, fail: (error) => { faults.keep(error, `${name} stopped on a fault of Plumbline`); } };
}

const loadingLine = (name: string): HTMLElement => element("p", { class: "slot__loading", role: "status" }, `Opening ${name} …`);

interface FaultPlace {
  readonly content: HTMLElement;
  /** Until the view is drawn again. */
  tell(error: unknown, heading: string): void;
  /** Until the user tries again. */
  keep(error: unknown, heading: string): void;
  clear(): void;
}

function faultPlace(draw: () => void): FaultPlace {
  const content = element("div", {});
  let isKept = false;
  const retry = (): void => {
    isKept = false;
    draw();
  };
  const tell = (error: unknown, heading: string): void => {
    content.replaceChildren(failureNotice({ error, heading, retry, advice: "The other views go on, and nothing in the workbook was changed by this. Try again; if it fails again, send the details below to whoever looks after Plumbline." }));
  };
  return {
    content, tell,
    keep: (error, heading) => {
      isKept = true;
      tell(error, heading);
    },
    clear: () => { if (!isKept) content.replaceChildren(); },
  };
}

function attempt(work: () => void, failed: (error: unknown) => void): void {
  try {
    work();
  } catch (error) {
    failed(error);
  }
}
