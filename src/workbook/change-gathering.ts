/** Quick edits told as one. */
import type { WorkbookChange } from "./port";

/** Long enough to join the events of one paste, short enough that the panel seems to follow the hand. */
const QUIET_MILLISECONDS = 20;

type Listener = (change: WorkbookChange) => void;

export interface ChangeGathering {
  /** Notes that tables changed; the listeners hear of it once it has been quiet for a moment. */
  note(tables: readonly string[]): void;
  /** @returns stops the telling */
  listen(listener: Listener): () => void;
}

export function gatherChanges(): ChangeGathering {
  const listeners = new Set<Listener>();
  const touched = new Set<string>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const tell = (): void => {
    const tables = [...touched];
    touched.clear();
    for (const listener of [...listeners]) listener({ tables });
  };
  return {
    note: (tables) => {
      for (const table of tables) touched.add(table);
      clearTimeout(timer);
      timer = touched.size > 0 ? setTimeout(tell, QUIET_MILLISECONDS) : undefined;
    },
    listen: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
}
