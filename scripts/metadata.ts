// npm run metadata: writes src/functions/functions.json from the declarations beside it, and headings.json from their tables.
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { headingsText } from "./answer-headings";
import { functionFiles, metadataText, readFunctionMetadata } from "./function-metadata";

const target = (name: string): string => fileURLToPath(new URL(`../src/functions/${name}`, import.meta.url));

try {
  const metadata = await readFunctionMetadata(functionFiles());
  writeFileSync(target("functions.json"), metadataText(metadata));
  writeFileSync(target("headings.json"), headingsText());
  console.log(`${metadata.functions.length} functions: ${metadata.functions.map(({ id }) => id).join(", ")}`);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
