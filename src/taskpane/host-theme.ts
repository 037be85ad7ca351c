/** Light or dark as the host is; where it does not say, as the system is. Forced colours win over both by the browser's own doing. */
export type HostTheme = "light" | "dark" | undefined;

/**
 * Puts the host's theme on the panel now and whenever the user comes back to the pane, as no host tells of a change.
 * @returns stops it
 */
export function followTheme(content: HTMLElement, theme: () => HostTheme): () => void {
  const take = (): void => {
    const now = theme();
    if (now === undefined) delete content.dataset["theme"];
    else content.dataset["theme"] = now;
  };
  take();
  window.addEventListener("focus", take);
  document.addEventListener("visibilitychange", take);
  return () => {
    window.removeEventListener("focus", take);
    document.removeEventListener("visibilitychange", take);
  };
}
