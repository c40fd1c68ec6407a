import { statSync } from "node:fs";
import { pathTo } from "./root.mjs";
import { runNpm } from "./run.mjs";

/** Installs the packages where they are missing or older than package-lock.json; false if that failed. */
export function installIfNeeded() {
  const installed = modifiedAt("node_modules/.package-lock.json");
  if (installed !== null && installed >= modifiedAt("package-lock.json")) return true;
  console.log("Installing packages (about a minute, once) ...");
  return runNpm(["ci", "--include=dev", "--no-audit", "--no-fund"]);
}

function modifiedAt(path) {
  return statSync(pathTo(path), { throwIfNoEntry: false })?.mtimeMs ?? null;
}
