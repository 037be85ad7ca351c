/** Quick edits told as one. */
import type { WorkbookChange } from "./port";
import { telling } from "./telling";

/** Long enough to join the events of one paste, short enough that the panel seems to follow the hand. */
const QUIET_MILLISECONDS = 20;

export interface ChangeGathering {
  /** Notes that tables changed; the listeners hear of it once it has been quiet for a moment. */
  note(tables: readonly string[]): void;
  /** The same where finding them takes its time: it is asked once, when it has been quiet for a moment. */
  noteLater(find: () => readonly string[]): void;
  /** @returns stops the telling */
  listen(listener: (change: WorkbookChange) => void): () => void;
}

export function gatherChanges(): ChangeGathering {
  const changes = telling<WorkbookChange>();
  const touched = new Set<string>();
  let findLater: (() => readonly string[]) | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const tell = (): void => {
    const tables = [...new Set([...touched, ...(findLater?.() ?? [])])];
    touched.clear();
    findLater = undefined;
    if (tables.length > 0) changes.tell({ tables });
  };
  const wait = (): void => {
    clearTimeout(timer);
    timer = touched.size > 0 || findLater ? setTimeout(tell, QUIET_MILLISECONDS) : undefined;
  };
  return {
    note: (tables) => {
      for (const table of tables) touched.add(table);
      wait();
    },
    noteLater: (find) => {
      findLater = find;
      wait();
    },
    listen: (listener) => changes.listen(listener),
  };
}
