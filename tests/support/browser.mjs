import { findChromium } from "./find-chromium.mjs";
import { runs, runsPackage } from "./stages.mjs";

/** Makes sure that there is a browser: one that is there, else Playwright's own, else the system's package. */
export function provideBrowser() {
  if (!findChromium()) runsPackage("@playwright/test/cli.js", ["install", "chromium"]);
  if (!findChromium() && process.platform === "linux") {
    const sudo = process.getuid?.() === 0 ? [] : ["sudo", "-n"];
    const [command, ...args] = [...sudo, "sh", "-c", "apt-get update && apt-get install -y chromium"];
    runs(command, args);
  }
  const path = findChromium();
  console.log(path ? `Chromium: ${path}` : "No Chromium found. Install one, or name it in CHROMIUM_PATH.");
  return path !== null;
}
