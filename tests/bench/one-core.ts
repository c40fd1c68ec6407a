import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { MAKING_FLAGS } from "@/app/_server/generation/making-flags";

const SCRIPT = fileURLToPath(new URL("print-stages.ts", import.meta.url));

/**
 * The stages in a process of their own that runs as the server's workers do, held to one core where the system can: then the
 * compiler and the garbage collector, which work in threads beside, take their time from the same core.
 */
export function benchStagesOnOneCore(): string[] {
  const node = [process.execPath, ...MAKING_FLAGS, "--import", "tsx", SCRIPT];
  const [command, ...rest] = canHold() ? ["taskset", "-c", "0", ...node] : node;
  return execFileSync(command, rest, { encoding: "utf8" }).trimEnd().split("\n");
}

function canHold(): boolean {
  try {
    execFileSync("taskset", ["-c", "0", "true"], { stdio: "ignore" });
    return true;
  } catch {
    return false;
  }
}
