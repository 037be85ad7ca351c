/** Gives lines that run side by side a lane each, so that they may cross but never lie on one another. */

export interface Way {
  /** Where it comes in from above. */
  readonly above: number;
  /** Where it goes out below. */
  readonly below: number;
}

/** Across in one lane, to where it goes on down. */
export interface Step {
  /** Counted from above. */
  readonly lane: number;
  readonly to: number;
}

/**
 * The steps of each way across a channel, mostly one. Ways that share a lane do not touch, and a way that comes down where another goes
 * on down lies above it; where ways wait for one another in a ring, one of them takes two steps.
 * @source constrained left-edge algorithm with doglegs; Hashimoto and Stevens, Wire routing by optimizing channel assignment, 1971; Deutsch, A dogleg channel router, 1976
 */
export function lanesOf(ways: readonly Way[]): Step[][] {
  const steps = ways.map((): Step[] => []);
  let waiting: readonly Piece[] = ways.map((way, owner) => ({ ...way, owner }));
  for (let lane = 0; waiting.length > 0; lane++) {
    const free = waiting.filter((piece) => !waiting.some((other) => mustLieAbove(other, piece)));
    if (free.length === 0) {
      const [first, ...rest] = broken(waiting, ways);
      waiting = first ? [...first, ...rest.flat()] : [];
    }
    const placed = leftEdge(free.length > 0 ? free : waiting.slice(0, 1));
    for (const { owner, below } of placed) steps[owner]?.push({ lane, to: below });
    waiting = waiting.filter((piece) => !placed.includes(piece));
  }
  return steps;
}

/** Stretches of one line along the car, each in the first lane where it touches no other. */
export function stackLanes(stretches: readonly (readonly [number, number])[]): number[] {
  const taken: (readonly [number, number])[][] = [];
  return stretches.map((stretch) => {
    const [from, to] = [Math.min(...stretch), Math.max(...stretch)];
    const free = taken.findIndex((lane) => lane.every(([start, end]) => to + CLEAR < start || end + CLEAR < from));
    const lane = free < 0 ? taken.length : free;
    (taken[lane] ??= []).push([from, to]);
    return lane;
  });
}

/** Between the ends of two lines in one lane, and between two that go down side by side. */
const CLEAR = 8;

interface Piece extends Way {
  readonly owner: number;
  /** The piece of the same way that comes before it. */
  readonly after?: Piece;
}

const leftOf = (piece: Way): number => Math.min(piece.above, piece.below);
const rightOf = (piece: Way): number => Math.max(piece.above, piece.below);

function mustLieAbove(upper: Piece, lower: Piece): boolean {
  if (upper.owner === lower.owner) return lower.after === upper;
  return Math.abs(upper.above - lower.below) < CLEAR;
}

/** As many as fit into one lane side by side. */
function leftEdge(pieces: readonly Piece[]): Piece[] {
  let end = -Infinity;
  return [...pieces].sort((a, b) => leftOf(a) - leftOf(b)).filter((piece) => {
    if (leftOf(piece) < end + CLEAR) return false;
    end = rightOf(piece);
    return true;
  });
}

/** The first way of the ring that is still whole takes a step to where nothing else goes down; its first half is free at once. */
function broken(waiting: readonly Piece[], ways: readonly Way[]): Piece[][] {
  const whole = waiting.find((piece) => piece.after === undefined && rightOf(piece) - leftOf(piece) < LONGEST);
  if (!whole) return waiting.map((piece) => [piece]);
  const columns = [...ways.flatMap(({ above, below }) => [above, below]), ...waiting.flatMap(({ above, below }) => [above, below])];
  const middle = clearOf(columns, (whole.above + whole.below) / 2);
  const first: Piece = { owner: whole.owner, above: whole.above, below: middle };
  return [[first], ...waiting.map((piece) => (piece === whole ? [{ owner: whole.owner, above: middle, below: whole.below, after: first }] : [piece]))];
}

/** A line to the wheels runs across the whole car and has no middle. */
const LONGEST = 1e4;

function clearOf(columns: readonly number[], wanted: number): number {
  const tries = Array.from({ length: 80 }, (_, index) => wanted + (index % 2 === 0 ? 1 : -1) * Math.ceil(index / 2) * 3);
  return tries.find((x) => x > 0 && columns.every((column) => Math.abs(column - x) >= CLEAR)) ?? wanted;
}
