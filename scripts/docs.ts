/** npm run docs: writes the reference pages that are generated from the product's own tables. */
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { pages } from "./docs/pages";

for (const [path, text] of Object.entries(pages())) {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
  console.log(path);
}
