/** One batch: what is asked for waits in a queue until sync, and only what was loaded can be read. */
import { FakeError, type FakeBook } from "./book";

/** What the host can do, how it answers and what was asked of it. */
export class FakeHost {
  /** Whether it merges the syncs of a run into one step to undo. */
  mergesUndo = true;
  /** Bytes that an answer may have. */
  largest = 5_000_000;
  /** Bytes that a request may have. */
  largestRequest = 5_000_000;
  syncs = 0;
  /** Codes that the next syncs fail with, before they do anything. */
  readonly failures: string[] = [];
  /** The code that a sync fails with, by its number from 1. */
  answerTo: (sync: number) => string | undefined = () => undefined;
  /** Pieces of work carried out, and the number of the one at which the host breaks off, once. */
  works = 0;
  breaksAt = 0;
  /** Number of the sync whose answer is lost after its work was done. */
  losesAnswerOf = 0;

  work(): void {
    this.works += 1;
    if (this.works === this.breaksAt) throw new FakeError("GeneralException");
  }
}

interface Asked {
  readonly writes: boolean;
  readonly size: number;
  readonly work: () => unknown;
  /** Takes in what `work` answered, once the whole answer has come through. */
  readonly keep?: (answer: unknown) => void;
}

export class FakeContext {
  private queue: Asked[] = [];
  private hasStep = false;

  constructor(readonly book: FakeBook, readonly host: FakeHost, private readonly oneUndoStep: boolean) {}

  ask<T>(work: () => T, keep?: (answer: T) => void): void {
    this.queue.push({ writes: false, size: 0, work, ...(keep ? { keep: keep as (answer: unknown) => void } : {}) });
  }

  /** @param payload what travels to the host */
  write(work: () => void, payload: unknown = ""): void {
    this.queue.push({ writes: true, size: JSON.stringify(payload).length, work });
  }

  async sync(): Promise<void> {
    await Promise.resolve();
    this.host.syncs += 1;
    const asked = this.queue;
    this.queue = [];
    const failure = this.host.failures.shift() ?? this.host.answerTo(this.host.syncs);
    if (failure !== undefined) throw new FakeError(failure);
    if (asked.reduce((sum, { size }) => sum + size, 0) > this.host.largestRequest) throw new FakeError("RequestPayloadSizeLimitExceeded");
    if (asked.some(({ writes }) => writes)) this.beginStep();
    this.answer(asked);
  }

  /** Work is done in its order up to the first fault, and what was done stays done. */
  private answer(asked: readonly Asked[]): void {
    const answers = asked.map(({ writes, work }) => {
      if (writes && this.book.isReadOnly) throw new FakeError("AccessDenied");
      this.host.work();
      return work();
    });
    if (this.host.syncs === this.host.losesAnswerOf) throw new FakeError("GeneralException", "the answer was lost");
    const size = answers.reduce<number>((sum, answer) => sum + weight(answer), 0);
    if (size > this.host.largest) throw new FakeError("ResponsePayloadSizeLimitExceeded");
    asked.forEach(({ keep }, index) => keep?.(answers[index]));
  }

  private beginStep(): void {
    if (this.oneUndoStep && this.host.mergesUndo && this.hasStep) return;
    this.hasStep = true;
    this.book.beginStep();
  }
}

/** What is loaded becomes readable at the next sync, and stays as it was then. */
export class Loaded {
  private values = new Map<string, unknown>();

  constructor(private readonly context: FakeContext, private readonly fetch: (path: string) => unknown) {}

  load(names: string): void {
    this.context.ask(
      () => new Map(namesIn(names).map((name) => [name, this.fetch(name)])),
      (loaded) => { this.values = new Map([...this.values, ...loaded]); },
    );
  }

  preload(names: readonly string[]): void {
    for (const name of names) this.values.set(name, this.fetch(name));
  }

  /** Of what was loaded last. */
  get weight(): number { return weightOf([...this.values.values()].at(-1)); }

  read<T>(name: string): T {
    if (!this.values.has(name)) throw new Error(`PropertyNotLoaded: ${name}. Call load and sync before reading it.`);
    return this.values.get(name) as T;
  }
}

export const namesIn = (names: string): readonly string[] => names.split(",").map((name) => name.trim());

/** Cells are what makes an answer large, those of several areas together; names and counts are not weighed. */
const weight = (answer: unknown): number => (answer instanceof Map ? [...answer.values()].reduce<number>((sum, value) => sum + weightOf(value), 0) : 0);

function weightOf(value: unknown): number {
  if (!Array.isArray(value)) return 0;
  if (Array.isArray(value[0])) return JSON.stringify(value).length;
  const [last] = value.slice(-1) as readonly { readonly weight?: number }[];
  return last?.weight === undefined ? 0 : (value as readonly { readonly weight: number }[]).reduce((sum, each) => sum + each.weight, 0);
}

/** A thing that may not be there: only a sync tells. */
export class Presence {
  private found: boolean | undefined;

  constructor(context: FakeContext, isThere: () => boolean) {
    context.ask(isThere, (found) => { this.found = found; });
  }

  get isNullObject(): boolean {
    if (this.found === undefined) throw new Error("PropertyNotLoaded: isNullObject");
    return !this.found;
  }
}
