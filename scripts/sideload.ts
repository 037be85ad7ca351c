// npm run sideload [-- --remove]: makes the built add-in known to the Excel of this computer, for one person who tries it.
import { spawnSync } from "node:child_process";
import { copyFileSync, existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { homedir } from "node:os";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { sideload, type Computer } from "./sideload-steps";

const manifest = fileURLToPath(new URL("../dist/addin/manifest.xml", import.meta.url));

const computer: Computer = {
  platform: process.platform,
  home: homedir(),
  exists: existsSync,
  read: (path) => readFileSync(path, "utf8"),
  copy: (from, folder, name) => {
    mkdirSync(folder, { recursive: true });
    copyFileSync(from, `${folder}/${name}`);
  },
  remove: (path) => { rmSync(path, { force: true }); },
  succeeds: (program, words) => spawnSync(program, words, { stdio: "ignore" }).status === 0,
};

try {
  const { remove } = parseArgs({ options: { remove: { type: "boolean", default: false } } }).values;
  console.log(sideload(computer, manifest, remove));
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
