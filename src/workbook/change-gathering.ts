/** Quick edits told as one. */
import type { WorkbookChange } from "./port";
import { telling } from "./telling";

/** Long enough to join the events of one paste, short enough that the panel seems to follow the hand. */
const QUIET_MILLISECONDS = 20;

export interface ChangeGathering {
  /** Notes that tables changed; the listeners hear of it once it has been quiet for a moment. */
  note(tables: readonly string[]): void;
  /** @returns stops the telling */
  listen(listener: (change: WorkbookChange) => void): () => void;
}

export function gatherChanges(): ChangeGathering {
  const changes = telling<WorkbookChange>();
  const touched = new Set<string>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const tell = (): void => {
    const tables = [...touched];
    touched.clear();
    changes.tell({ tables });
  };
  return {
    note: (tables) => {
      for (const table of tables) touched.add(table);
      clearTimeout(timer);
      timer = touched.size > 0 ? setTimeout(tell, QUIET_MILLISECONDS) : undefined;
    },
    listen: (listener) => changes.listen(listener),
  };
}
