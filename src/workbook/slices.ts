/** Long work in slices between which the page can draw and hear. */

export interface Slices {
  /** Lets the page draw when the slice at hand is used up. */
  rest(): Promise<void>;
  /** Does one thing after the other. @returns false when it was interrupted */
  each<T>(items: readonly T[], work: (item: T) => void, options: SliceOptions): Promise<boolean>;
}

export interface SliceOptions {
  /** Told between slices only. */
  readonly progress: (done: number, total: number) => void;
  readonly interrupted: () => boolean;
}

/** Frames last 16 ms; a slice leaves the page time to draw. */
const SLICE_MILLISECONDS = 12;

/** The first slice begins now. */
export function slices(): Slices {
  let start = performance.now();
  const isUsedUp = (): boolean => performance.now() - start >= SLICE_MILLISECONDS;
  const pause = async (): Promise<void> => {
    await new Promise((resolve) => { setTimeout(resolve, 0); });
    start = performance.now();
  };
  return {
    rest: async () => { if (isUsedUp()) await pause(); },
    each: async (items, work, { progress, interrupted }) => {
      for (const [index, item] of items.entries()) {
        work(item);
        if (!isUsedUp()) continue;
        progress(index + 1, items.length);
        await pause();
        if (interrupted()) return false;
      }
      return true;
    },
  };
}
