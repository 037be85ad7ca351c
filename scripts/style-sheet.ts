import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";

export interface StyleSheet {
  readonly text: string;
  /** Every file that is in it. */
  readonly files: readonly string[];
}

/** A style sheet with the files that its `@import "./…";` lines name put in their place, theirs too. */
export function readStyleSheet(file: string): StyleSheet {
  const files = [file];
  const text = readFileSync(file, "utf8").replace(/^@import "(\.[^"]+)";$/gm, (_, name: string) => {
    const part = readStyleSheet(join(dirname(file), name));
    files.push(...part.files);
    return part.text;
  });
  return { text, files };
}
