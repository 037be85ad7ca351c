/** Taper pipe threads: their sizes, and what calipers read on a taper. */
import { inches, metres, type Metres } from "./quantity";

interface PipeSize {
  readonly perInch: number;
  readonly outside: number;
  /** Length of hand-tight engagement. */
  readonly handTight: number;
}

/** By nominal size: threads and outside diameter in inches, hand-tight engagement L1 in inches (ASME B1.20.1, from memory). */
const PIPE_SIZES: Readonly<Record<string, PipeSize>> = {
  "1/16": { perInch: 27, outside: 0.3125, handTight: 0.16 },
  "1/8": { perInch: 27, outside: 0.405, handTight: 0.1615 },
  "1/4": { perInch: 18, outside: 0.54, handTight: 0.2278 },
  "3/8": { perInch: 18, outside: 0.675, handTight: 0.24 },
  "1/2": { perInch: 14, outside: 0.84, handTight: 0.32 },
};

/** Outside diameter of a nominal pipe size; undefined for a size or pitch that is not NPT. */
export function pipeOutsideDiameter(size: string, perInch: number): Metres | undefined {
  const pipe = PIPE_SIZES[size];
  return pipe?.perInch === perInch ? inches(pipe.outside) : undefined;
}

/**
 * What a caliper reads on a taper pipe thread: from the small end to the full size outside, from the bottom to the mouth inside.
 * @param size nominal size, `1/8`
 * @returns external major and internal minor diameters [m]
 * @source ASME B1.20.1: E0 = D - (0.05 D + 1.1) P, E1 = E0 + L1/16, thread height 0.8 P (from memory)
 */
export function pipeWindows(size: string): { readonly external: readonly [Metres, Metres]; readonly internal: readonly [Metres, Metres] } | undefined {
  const pipe = PIPE_SIZES[size];
  if (!pipe) return undefined;
  const pitch = 1 / pipe.perInch;
  const smallEnd = pipe.outside - (0.05 * pipe.outside + 1.1) * pitch;
  const height = 0.8 * pitch;
  return {
    external: [inches(smallEnd + height), inches(pipe.outside)],
    internal: [inches(smallEnd - height), metres(inches(smallEnd + pipe.handTight / 16 - height))],
  };
}
