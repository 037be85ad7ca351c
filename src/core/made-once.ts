/** Answers made once and kept: thousands of cars ask the same few questions. What is kept never changes an answer. */

/** Made when first asked for. */
export function once<T>(make: () => T): () => T {
  let known: { readonly made: T } | undefined;
  return () => (known ??= { made: make() }).made;
}

/** Made once for each object, and forgotten with it. */
export function madeOnce<K extends object, T>(make: (of: K) => T): (of: K) => T {
  const kept = madeOnceFor<K, T>();
  return (key) => kept(key, () => make(key));
}

/** The same, where making it takes more than the object it is kept for. */
export function madeOnceFor<K extends object, T>(): (key: K, make: () => T) => T {
  const kept = new WeakMap<K, { readonly made: T }>();
  return (key, make) => {
    const known = kept.get(key);
    if (known) return known.made;
    const made = make();
    kept.set(key, { made });
    return made;
  };
}

/** Made once for each object, and kept only while it is kept elsewhere too. */
export function madeOnceWeakly<K extends object, T extends object>(make: (of: K) => T): (of: K) => T {
  const kept = new WeakMap<K, WeakRef<T>>();
  return (key) => {
    const known = kept.get(key)?.deref();
    if (known) return known;
    const made = make(key);
    kept.set(key, new WeakRef(made));
    return made;
  };
}

/** Made once for askers that come one after the other: the few last made are kept, so that thousands do not stay for good. */
export function madeLately<K extends object, T>(): (key: K, make: () => T) => T {
  const kept: { readonly key: K; readonly made: T }[] = [];
  return (key, make) => {
    const known = kept.find((one) => one.key === key);
    if (known) return known.made;
    const made = make();
    kept.unshift({ key, made });
    kept.length = Math.min(kept.length, LATELY);
    return made;
  };
}

const LATELY = 4;

export interface MadeByKey<T> {
  (key: string, make: (key: string) => T): T;
  readonly forget: () => void;
}

/** Made once for each key. Once so many are kept all are forgotten, and what is still wanted is made again. @param whenFull told of it */
export function madeOnceByKey<T>(most = Infinity, whenFull?: () => void): MadeByKey<T> {
  const kept = new Map<string, { readonly made: T }>();
  const forget = (): void => { kept.clear(); };
  const ask = (key: string, make: (key: string) => T): T => {
    const known = kept.get(key);
    if (known) return known.made;
    const made = make(key);
    if (kept.size >= most) { forget(); whenFull?.(); }
    kept.set(key, { made });
    return made;
  };
  return Object.assign(ask, { forget });
}
