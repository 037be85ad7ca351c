// npm start: install if needed, build, serve the embedded page and print its address.
import { ensureInstalled } from "./installation.mjs";
import { runNode } from "./run-command.mjs";

try {
  await ensureInstalled();
  console.log("Building the page …");
  await runNode("--import", "tsx", "scripts/build.ts", "--only", "embedded", "--quiet");
  await runNode("--import", "tsx", "scripts/serve.ts");
} catch (error) {
  if (!error.stopped) {
    console.error(error.message);
    process.exitCode = 1;
  }
}
