import { spawnSync } from "node:child_process";
import { ROOT } from "./root.mjs";

/** Runs a program of Node in the checkout, with its output shown; true if it ended well. */
export function runNode(args, env = {}) {
  return run(process.execPath, args, env);
}

export function runNpm(args) {
  // on Windows npm is a script of the shell
  return run("npm", args, {}, process.platform === "win32");
}

function run(command, args, env, shell = false) {
  const { status, error } = spawnSync(command, args, {
    cwd: ROOT,
    stdio: "inherit",
    shell,
    env: { ...process.env, NEXT_TELEMETRY_DISABLED: "1", ...env },
  });
  if (error) console.error(`${command} could not be started: ${error.message}`);
  return status === 0;
}
