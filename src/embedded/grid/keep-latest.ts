/** Keeps what was made last under each key, so that what nobody asks for any more goes. */

/**
 * Puts a value under its key as the latest, and lets the one go that was put in longest ago when there are more than so many.
 * @param kept in the order in which they were put in, as a Map has them
 */
export function keepLatest<Value>(kept: Map<string, Value>, key: string, value: Value, most: number): void {
  kept.delete(key);
  kept.set(key, value);
  if (kept.size > most) kept.delete(kept.keys().next().value ?? "");
}
