/** Each of a list once, by its key, with how often it stands there. */
export const tally = <T>(list: readonly T[], keyOf: (one: T) => string): { readonly one: T; readonly count: number }[] =>
  [...groupBy(list, keyOf).values()].map((same) => ({ one: same[0] as T, count: same.length }));

/** Groups a list by a key, both orders kept. */
export function groupBy<T, K extends string = string>(list: readonly T[], keyOf: (one: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const one of list) {
    const key = keyOf(one);
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  return groups;
}
