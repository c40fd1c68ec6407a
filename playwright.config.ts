import { defineConfig } from "@playwright/test";
import { findChromium } from "./tests/support/find-chromium.mjs";

const port = Number(process.env.PORT ?? 3213);
const address = `http://localhost:${port}`;

export default defineConfig({
  testDir: "tests/e2e",
  outputDir: "test-results/playwright",
  // one server and one database for all: the tests take turns
  workers: 1,
  forbidOnly: !!process.env.CI,
  timeout: 60_000,
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
    { name: "workshop", testMatch: "*.spec.ts", dependencies: ["first start"] },
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
