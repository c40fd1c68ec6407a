import { accessSync, constants } from "node:fs";
import { chromium } from "@playwright/test";

const CANDIDATES = [
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/usr/bin/google-chrome-stable",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
];

/** A browser to test in: CHROMIUM_PATH, the system's, or the one that Playwright downloaded; null where there is none. */
export function findChromium() {
  const paths = [process.env.CHROMIUM_PATH, ...CANDIDATES, chromium.executablePath()];
  return paths.find((path) => path && isExecutable(path)) ?? null;
}

function isExecutable(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
