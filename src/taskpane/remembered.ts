/** Small things that the panel remembers for as long as its window is open; a host that closes the storage loses the memory and nothing else. */

export function recall(key: string): string | undefined {
  try {
    return sessionStorage.getItem(PREFIX + key) ?? undefined;
  } catch {
    return undefined;
  }
}

export function remember(key: string, value: string): void {
  try {
    sessionStorage.setItem(PREFIX + key, value);
  } catch {
    // Closed or full: the choice then lasts until the panel is closed.
  }
}

const PREFIX = "plumbline ";
