import { fileURLToPath } from "node:url";
import { servePage } from "./page-server";

// Serves the built local page until it is stopped. PORT names another port to begin with than 4173.
const port = Number(process.env["PORT"] ?? 4173);

try {
  if (!Number.isInteger(port) || port < 0 || port > 65_535) throw new Error(`PORT is a number from 0 to 65535 (read: ${String(process.env["PORT"])}).`);
  const { address } = await servePage(fileURLToPath(new URL("../dist/embedded", import.meta.url)), port);
  console.log(`Plumbline is at ${address} (stop it with Ctrl+C).`);
} catch (problem) {
  console.error(problem instanceof Error ? problem.message : problem);
  process.exitCode = 1;
}
