/** Draws the grid in the page and takes what the user does there. */
import { App } from "@odoo/owl";
import { clearBeforeFirstKey } from "./first-key";
import { type Grid } from "./grid";
import { type GridLibrary } from "./library";

/** What the grid says to the user: a passing note, an error to read, a question. */
export interface GridMessages {
  note(text: string): void;
  error(text: string, done?: () => void): void;
  ask(text: string, yes: () => void, no?: () => void): void;
}

export interface GridView {
  unmount(): void;
}

/** What is used of the library's component once it is on the page. */
interface MountedSpreadsheet {
  readonly env: { getStore<Store extends abstract new (...needs: never[]) => unknown>(store: Store): InstanceType<Store> };
}

/**
 * Shows the grid in an element.
 * @param templates the library's own XML templates
 */
export async function mountGrid(library: GridLibrary, grid: Grid, place: { element: HTMLElement; templates: string; messages: GridMessages }): Promise<GridView> {
  leaveOutCharts(library);
  const { element, templates, messages } = place;
  const props = {
    model: grid.model,
    colorScheme: matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light",
    notifyUser: ({ text }: { text: string }) => {
      messages.note(text);
    },
    raiseError: (text: string, done?: () => void) => {
      messages.error(text, done);
    },
    askConfirmation: (text: string, yes: () => void, no?: () => void) => {
      messages.ask(text, yes, no);
    },
  };
  const app = new App(library.Spreadsheet as never, { props: props as never, templates });
  const { env } = await app.mount(element) as unknown as MountedSpreadsheet;
  const editor = env.getStore(library.stores.CellComposerStore);
  const shown = new AbortController();
  clearBeforeFirstKey(element, () => editor.editionMode !== "inactive", shown.signal);
  return {
    unmount: () => {
      shown.abort();
      app.destroy();
    },
  };
}

/** Charts need a library we do not ship, and pictures a store of files; both would be lost in the saved file. */
function leaveOutCharts(library: GridLibrary): void {
  const unwanted = new Set(["insert_chart", "insert_carousel", "insert_image", "insert_pivot", "print", "pivot_data_sources"]);
  const menus = library.registries.topbarMenuRegistry as unknown as { content: Record<string, { children?: { id?: string }[] }> };
  for (const menu of Object.values(menus.content)) {
    menu.children = menu.children?.filter(({ id }) => id === undefined || !unwanted.has(id));
  }
}
