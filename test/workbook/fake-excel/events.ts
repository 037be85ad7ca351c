import type { EventName } from "./book";
import type { FakeContext } from "./context";

type Handler = (event: Readonly<Record<string, string>>) => unknown;

export class FakeEvents {
  constructor(private readonly context: FakeContext, private readonly name: EventName) {}

  /** A handler can be taken away through the context it was added with only, as in Excel. */
  add(handler: Handler): { readonly context: FakeContext; remove(): void } {
    const { context, name } = this;
    const handlers = (): Set<Handler> => {
      const all = context.book.handlers.get(name) ?? new Set();
      context.book.handlers.set(name, all);
      return all;
    };
    context.ask(() => void handlers().add(handler));
    return { context, remove: () => { context.ask(() => void handlers().delete(handler)); } };
  }
}
