// npm run metadata: writes src/functions/functions.json from the declarations beside it.
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { functionFiles, metadataText, readFunctionMetadata } from "./function-metadata";

const target = fileURLToPath(new URL("../src/functions/functions.json", import.meta.url));

try {
  const metadata = await readFunctionMetadata(functionFiles());
  writeFileSync(target, metadataText(metadata));
  console.log(`${metadata.functions.length} functions: ${metadata.functions.map(({ id }) => id).join(", ")}`);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
