/** Listeners that are told, until they stop it. */
export interface Telling<T> {
  tell(news: T): void;
  /** @returns stops the telling */
  listen(listener: (news: T) => void): () => void;
  readonly hasListeners: boolean;
}

export function telling<T>(): Telling<T> {
  const listeners = new Map<object, (news: T) => void>();
  return {
    tell: (news) => {
      for (const listener of [...listeners.values()]) listener(news);
    },
    listen: (listener) => {
      const place = {}; // so that the same function may listen twice
      listeners.set(place, listener);
      return () => void listeners.delete(place);
    },
    get hasListeners() {
      return listeners.size > 0;
    },
  };
}
