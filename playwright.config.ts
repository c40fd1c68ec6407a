import { readdirSync, readFileSync } from "node:fs";
import { defineConfig } from "@playwright/test";
import { findChromium } from "./tests/support/find-chromium.mjs";

const port = Number(process.env.PORT ?? 3213);
/** Tests that start servers of their own, each with its own database. */
const OWN_SERVER = readdirSync("tests/e2e").filter(
  (file) => file.endsWith(".spec.ts") && readFileSync(`tests/e2e/${file}`, "utf8").includes("new OwnServer("),
);
const address = `http://localhost:${port}`;

export default defineConfig({
  testDir: "tests/e2e",
  outputDir: "test-results/playwright",
  // tests with a server and a database of their own wait for clocks most of the time, so that others can run beside them
  workers: 2,
  forbidOnly: !!process.env.CI,
  timeout: 120_000,
  // a plate is being made ahead on the same two cores while a page answers
  expect: { timeout: 20_000 },
  reporter: [["list"], ["json", { outputFile: "test-results/playwright.json" }]],
  use: {
    baseURL: address,
    viewport: { width: 1440, height: 900 },
    locale: "en-GB",
    timezoneId: "UTC",
    trace: "retain-on-failure",
    launchOptions: {
      executablePath: findChromium() ?? undefined,
      args: [
        "--no-sandbox",
        "--disable-dev-shm-usage",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
      ],
    },
  },
  projects: [
    { name: "first start", testMatch: "first-start.setup.ts" },
    // one server and one database for all of these: they take turns
    { name: "workshop", testMatch: "*.spec.ts", testIgnore: OWN_SERVER, dependencies: ["first start"], workers: 1 },
    // beside these, since what waits for nothing would be run before them
    { name: "own server", testMatch: OWN_SERVER, dependencies: ["first start"], workers: 1 },
  ],
  webServer: {
    command: "node app/_server/start.mjs --fresh",
    url: `${address}/api/health`,
    reuseExistingServer: false,
    timeout: 240_000,
    env: { PORT: String(port), HOST: "127.0.0.1", DATABASE_URL: "file:test-results/e2e.db" },
    stdout: "pipe",
  },
});
