/**
 * Stands for src/core/made-once.ts while mutants are tried: what is kept is forgotten before each test.
 * Tests that share a catalogue would hand the answers of the core as it is to a core with a mutant in it.
 */
import * as kept from "../../src/core/made-once";

let test = 0;
export const nextTest = (): void => { test++; };

/** What `make` gives, made again once another test has begun. */
function anew<T>(make: () => T): () => T {
  let [made, during] = [make(), test];
  return () => {
    if (during !== test) [made, during] = [make(), test];
    return made;
  };
}

export function once<T>(make: () => T): () => T {
  const asked = anew(() => kept.once(make));
  return () => asked()();
}

export function madeOnce<K extends object, T>(make: (of: K) => T): (of: K) => T {
  const asked = anew(() => kept.madeOnce(make));
  return (key) => asked()(key);
}

export function madeOnceFor<K extends object, T>(): (key: K, make: () => T) => T {
  const asked = anew(() => kept.madeOnceFor<K, T>());
  return (key, make) => asked()(key, make);
}

export function madeOnceWeakly<K extends object, T extends object>(make: (of: K) => T): (of: K) => T {
  const asked = anew(() => kept.madeOnceWeakly(make));
  return (key) => asked()(key);
}

export function madeLately<K extends object, T>(): (key: K, make: () => T) => T {
  const asked = anew(() => kept.madeLately<K, T>());
  return (key, make) => asked()(key, make);
}

export function madeOnceByKey<T>(most?: number, whenFull?: () => void): kept.MadeByKey<T> {
  const asked = anew(() => kept.madeOnceByKey<T>(most, whenFull));
  return Object.assign((key: string, make: (key: string) => T) => asked()(key, make), { forget: () => { asked().forget(); } });
}
