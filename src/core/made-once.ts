/** Answers made once and kept: thousands of cars ask the same few questions. What is kept never changes an answer. */

/** Made once for each object, and forgotten with it. */
export function madeOnce<K extends object, T>(make: (of: K) => T): (of: K) => T {
  const kept = new WeakMap<K, { readonly made: T }>();
  return (key) => {
    const known = kept.get(key);
    if (known) return known.made;
    const made = make(key);
    kept.set(key, { made });
    return made;
  };
}

/** Made once for each key. Once so many are kept all are forgotten, and what is still wanted is made again. */
export function madeOnceByKey<T>(most = Infinity): (key: string, make: (key: string) => T) => T {
  const kept = new Map<string, { readonly made: T }>();
  return (key, make) => {
    const known = kept.get(key);
    if (known) return known.made;
    const made = make(key);
    if (kept.size >= most) kept.clear();
    kept.set(key, { made });
    return made;
  };
}
