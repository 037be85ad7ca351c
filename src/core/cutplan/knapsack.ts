/**
 * Fills several rooms at once with the most valuable things, each thing a limited number of times.
 * Keeps for each weight only fillings that no lighter one equals in value, and drops those that even the best of what is left
 * could not make worth more than what is known (Nemhauser and Ullmann 1969, with the linear bound of Dantzig 1957).
 */
import type { Budget } from "./budget";

export interface Thing {
  readonly weight: number;
  readonly value: number;
  readonly most: number;
}

export interface Room {
  readonly capacity: number;
  /** Only fillings worth more than this are wanted. */
  readonly above: number;
  /** Improvements not larger than this are not looked for; 0.5 when all values are whole. The larger, the quicker. */
  readonly step: number;
}

export interface Filling {
  readonly value: number;
  /** In the order of the things. */
  readonly counts: number[];
}

/**
 * The most valuable filling of each room, to within its step.
 * @returns one for each room, undefined where none is worth more than the room asks; undefined as a whole when the budget ran out
 */
export function bestFillings(things: readonly Thing[], rooms: readonly Room[], budget: Budget): (Filling | undefined)[] | undefined {
  const largest = Math.max(0, ...rooms.map(({ capacity }) => capacity));
  const lots = lotsOf(things, largest);
  const search: Search = { rooms, largest, best: Float64Array.from(rooms, ({ above }) => above), bestState: new Int32Array(rooms.length).fill(-1), list: [0], used: 1 };
  weights[0] = values[0] = 0;
  parents[0] = -1;
  for (const [index, lot] of lots.entries()) {
    addLot(search, index, lot, lots[index + 1]?.ratio ?? 0);
    budget.spend(search.list.length + 1);
    if (budget.isOver()) return undefined;
  }
  return rooms.map((_, room) => fillingOf(search, lots, room, things.length));
}

interface Search {
  readonly rooms: readonly Room[];
  readonly largest: number;
  readonly best: Float64Array;
  readonly bestState: Int32Array;
  /** States in order of weight and of value. */
  list: number[];
  used: number;
}

/** So many of one thing, taken or left together: 1, 2, 4, … and a rest make every number up to the most. */
interface Lot {
  readonly thing: number;
  readonly copies: number;
  readonly weight: number;
  readonly value: number;
  readonly ratio: number;
}

function lotsOf(things: readonly Thing[], largest: number): Lot[] {
  const lots: Lot[] = [];
  things.forEach(({ weight, value, most }, thing) => {
    let left = value > 0 ? Math.min(most, Math.floor(largest / weight)) : 0;
    for (let copies = 1; left > 0; copies *= 2) {
      const taken = Math.min(copies, left);
      lots.push({ thing, copies: taken, weight: taken * weight, value: taken * value, ratio: value / weight });
      left -= taken;
    }
  });
  return lots.sort((a, b) => b.ratio - a.ratio || b.weight - a.weight || a.thing - b.thing);
}

/** The states of the search now running; kept between searches only to save making them anew. */
let [weights, values] = [new Float64Array(4096), new Float64Array(4096)];
let [parents, takenLots] = [new Int32Array(4096), new Int32Array(4096)];

function makeRoomFor(states: number): void {
  if (states <= weights.length) return;
  const size = Math.max(states, 2 * weights.length);
  const grown = [new Float64Array(size), new Float64Array(size), new Int32Array(size), new Int32Array(size)] as const;
  grown[0].set(weights);
  grown[1].set(values);
  grown[2].set(parents);
  grown[3].set(takenLots);
  [weights, values, parents, takenLots] = grown;
}

/** Merges the list with itself shifted by the lot. */
function addLot(search: Search, lotIndex: number, lot: Lot, nextRatio: number): void {
  const { list, largest } = search;
  makeRoomFor(search.used + list.length);
  const merged: number[] = [];
  let plain = 0;
  let shifted = 0;
  let top = -1;
  while (plain < list.length || shifted < list.length) {
    const plainState = list[plain] ?? -1;
    const base = list[shifted] ?? -1;
    const shiftedWeight = base < 0 ? Infinity : (weights[base] as number) + lot.weight;
    const plainWeight = plainState < 0 ? Infinity : (weights[plainState] as number);
    if (plainWeight === Infinity && shiftedWeight > largest) break;
    const takesPlain = plainWeight < shiftedWeight || (plainWeight === shiftedWeight && (values[plainState] as number) >= (values[base] as number) + lot.value);
    const state = takesPlain ? plainState : shiftedWeight > largest ? -1 : addState(search, base, lotIndex, lot);
    if (takesPlain) plain += 1;
    else shifted += 1;
    if (state < 0 || (values[state] as number) <= top) continue;
    top = values[state] as number;
    if (isPromising(search, state, nextRatio)) merged.push(state);
  }
  search.list = merged;
}

function addState(search: Search, parent: number, lotIndex: number, lot: Lot): number {
  const state = search.used;
  search.used += 1;
  const weight = (weights[parent] as number) + lot.weight;
  const value = (values[parent] as number) + lot.value;
  weights[state] = weight;
  values[state] = value;
  parents[state] = parent;
  takenLots[state] = lotIndex;
  for (let room = 0; room < search.rooms.length; room += 1) {
    if (weight <= (search.rooms[room] as Room).capacity && value > (search.best[room] as number)) {
      search.best[room] = value;
      search.bestState[room] = state;
    }
  }
  return state;
}

/** Whether the rest of a room, filled with the best of what is left, could make this filling worth more than the best known. */
function isPromising({ rooms, best }: Search, state: number, ratio: number): boolean {
  const weight = weights[state] as number;
  const value = values[state] as number;
  for (let room = 0; room < rooms.length; room += 1) {
    const { capacity, step } = rooms[room] as Room;
    if (capacity >= weight && value + ratio * (capacity - weight) > (best[room] as number) + step) return true;
  }
  return false;
}

function fillingOf({ best, bestState }: Search, lots: readonly Lot[], room: number, things: number): Filling | undefined {
  let state = bestState[room] as number;
  if (state < 0) return undefined;
  const counts = new Array<number>(things).fill(0);
  for (; (parents[state] as number) >= 0; state = parents[state] as number) {
    const { thing, copies } = lots[takenLots[state] as number] as Lot;
    counts[thing] = (counts[thing] ?? 0) + copies;
  }
  return { value: best[room] as number, counts };
}
