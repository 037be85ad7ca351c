/** Long work in slices between which the page can draw and hear. */

export interface SliceOptions {
  /** Told between slices only. */
  readonly progress: (done: number, total: number) => void;
  readonly interrupted: () => boolean;
}

/** Frames last 16 ms; a slice leaves the page time to draw. */
const SLICE_MILLISECONDS = 12;

/** @returns the results in order, or undefined when it was interrupted */
export async function inSlices<T, R>(items: readonly T[], work: (item: T) => R, { progress, interrupted }: SliceOptions): Promise<R[] | undefined> {
  const done: R[] = [];
  let start = performance.now();
  for (const item of items) {
    done.push(work(item));
    if (performance.now() - start < SLICE_MILLISECONDS) continue;
    progress(done.length, items.length);
    await pause();
    if (interrupted()) return undefined;
    start = performance.now();
  }
  return done;
}

const pause = (): Promise<void> => new Promise((resolve) => { setTimeout(resolve, 0); });
