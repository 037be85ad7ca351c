import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";

const projectFolder = fileURLToPath(new URL("..", import.meta.url));

/**
 * Runs a program in the project folder with its output shown. A signal to stop us stops it too, so that no server is left behind.
 * @throws Error when it cannot be started or ends with anything but 0; its `stopped` says that it was told to end
 */
export function runCommand(program, words, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, words, { cwd: projectFolder, stdio: "inherit", ...options });
    let stopped = false;
    const passOn = (signal) => {
      stopped = true;
      child.kill(signal);
    };
    for (const signal of stopSignals) process.on(signal, passOn);
    child.on("error", reject);
    child.on("exit", (code, signal) => {
      for (const each of stopSignals) process.off(each, passOn);
      if (code === 0) resolve();
      else reject(Object.assign(new Error(`${[program, ...words].join(" ")} ended with ${signal ?? code}`), { stopped }));
    });
  });
}

/** Runs a script with Node itself, so that no shell and no batch file is between. */
export const runNode = (...words) => runCommand(process.execPath, words);

const stopSignals = ["SIGINT", "SIGTERM", "SIGHUP"];
