/** Keeps a cell's old text out of what is typed over it, however fast the keys come. */

/**
 * The library's editor holds the text of the selected cell while it is closed. It takes the first key alone, but reads
 * all its text at the second; where that comes before the page is drawn again, the old text would stay behind the new.
 * @param isOpen whether a cell is being edited
 * @param ended ends it with the workbook: another one may be shown in the same place
 */
export function clearBeforeFirstKey(sheet: HTMLElement, isOpen: () => boolean, ended: AbortSignal): void {
  sheet.addEventListener("beforeinput", ({ target }) => {
    if (target instanceof HTMLElement && target.closest(".o-grid .o-composer") && !isOpen()) target.replaceChildren();
  }, { capture: true, signal: ended });
}
