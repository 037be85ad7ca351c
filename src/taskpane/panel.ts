/** The side panel: the same in the spreadsheet's pane and in the local page. */
import { rememberCatalogue, reportOnRow } from "../functions/reports";
import { followWorkbook, type Following, type WorkbookListener } from "../workbook/workbook-reports";
import type { WorkbookPort } from "../workbook/port";
import { element } from "./element";
import { followTheme, type HostTheme } from "./host-theme";
import { panelContent, type HostOffers, type PanelContent } from "./panel-content";

export interface PanelOptions extends HostOffers {
  /** Address of panel.css; left out when the host's page links it itself. */
  readonly stylesheet?: string;
  /** The host's own theme; the system's, when left out. */
  readonly theme?: () => HostTheme;
}

export interface Panel {
  /** Takes the panel off the page and stops following the workbook. */
  unmount(): void;
}

/**
 * Puts the panel into an element or a shadow root and keeps it up to date with the workbook.
 * The panel is a labelled region of its host: the host supplies the page's landmarks.
 */
export function mountPanel(root: HTMLElement | ShadowRoot, port: WorkbookPort, options: PanelOptions = {}): Panel {
  const panel = panelContent(port, { stop: () => { following?.hold(); }, goOn: () => { following?.goOn(); } }, options);
  const style = styled(panel.content, options.stylesheet);
  root.append(...style, panel.content);
  let following: Following | undefined;
  let isGone = false;
  void nameOf(port).then((name) => {
    if (isGone) return;
    panel.remember(name);
    following = followWorkbook(port, listenerOf(panel, () => { following?.again(); }), sharedWithFunctions);
  });
  const stopHearing = [hearFaults(panel.showFault), port.onSelect(panel.showSelection), ...(options.theme ? [followTheme(panel.content, options.theme)] : [])];
  return {
    unmount: () => {
      isGone = true;
      for (const stop of stopHearing) stop();
      following?.stop();
      for (const node of [...style, panel.content]) node.remove();
    },
  };
}

/** A workbook that does not say its name shares its memory with others of that kind. */
const nameOf = (port: WorkbookPort): Promise<string> => port.workbookName().catch(() => "");

/** One cache for both, so that a reopened file works without a recalculation and panel and sheet cannot disagree. */
const sharedWithFunctions = { report: reportOnRow, catalogueRead: rememberCatalogue };

function listenerOf(panel: PanelContent, again: () => void): WorkbookListener {
  return {
    reading: (reading) => { panel.showReading(reading); },
    progress: (done, total) => { panel.showProgress(done, total); },
    held: () => { panel.showHeld(); },
    failed: (error) => { panel.showFailure(error, () => { panel.hideFailure(); again(); }); },
  };
}

/** Keeps the content out of sight until its style sheet is there, so that nothing jumps. */
function styled(content: HTMLElement, stylesheet: string | undefined): readonly HTMLElement[] {
  if (stylesheet === undefined) return [];
  const link = element("link", { rel: "stylesheet", href: stylesheet });
  const show = (): void => { content.hidden = false; };
  content.hidden = true;
  link.addEventListener("load", show);
  link.addEventListener("error", show); // unstyled is better than nothing
  return [link];
}

/** Faults that nobody caught: a click that throws, a promise that fails. What is no error, like a browser's remark on sizes, is left alone. */
function hearFaults(tell: (error: Error) => void): () => void {
  const thrown = ({ error }: ErrorEvent): void => { if (error instanceof Error) tell(error); };
  const rejected = ({ reason }: PromiseRejectionEvent): void => { if (reason instanceof Error) tell(reason); };
  window.addEventListener("error", thrown);
  window.addEventListener("unhandledrejection", rejected);
  return () => {
    window.removeEventListener("error", thrown);
    window.removeEventListener("unhandledrejection", rejected);
  };
}
