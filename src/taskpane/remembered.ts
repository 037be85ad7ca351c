/** Small choices that the panel remembers for each workbook; a host that closes the storage loses the memory and nothing else. */

let workbook = "";

/** Whose choices are recalled and remembered from now on. */
export function rememberFor(name: string): void {
  workbook = name;
}

export function recall(key: string): string | undefined {
  try {
    return localStorage.getItem(fullKey(key)) ?? undefined;
  } catch {
    return undefined;
  }
}

export function remember(key: string, value: string): void {
  try {
    localStorage.setItem(fullKey(key), value);
  } catch {
    // Closed or full: the choice then lasts until the panel is closed.
  }
}

const fullKey = (key: string): string => `plumbline ${workbook} ${key}`;
