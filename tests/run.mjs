// npm test: everything that has to hold, from a fresh checkout. The last line counts the tests.
import { checkNodeVersion } from "../app/_server/start/node-version.mjs";

checkNodeVersion();
const { installIfNeeded } = await import("../app/_server/start/install.mjs");
const { forgetReports, listStages, readCounts, reportFile, runsPackage, stage } = await import("./support/stages.mjs");

forgetReports();
await stage("install", () => installIfNeeded());
const { provideBrowser } = await import("./support/browser.mjs");
await stage("browser", provideBrowser);
await stage("database client", () => runsPackage("prisma/build/index.js", ["generate"]));
await stage("migrations match the schema", () =>
  runsPackage("prisma/build/index.js", [
    "migrate",
    "diff",
    "--from-migrations",
    "prisma/migrations",
    "--to-schema",
    "prisma/schema.prisma",
    "--exit-code",
  ]),
);
await stage(
  "types",
  () => runsPackage("next/dist/bin/next", ["typegen"]) && runsPackage("typescript/bin/tsc", ["--noEmit", "-p", "."]),
);
await stage("lint and format", () => runsPackage("@biomejs/biome/bin/biome", ["check", "--error-on-warnings", "."]));
await stage("vitest", () =>
  runsPackage("vitest/vitest.mjs", [
    "run",
    "--reporter=default",
    "--reporter=json",
    `--outputFile.json=${reportFile("vitest")}`,
  ]),
);
const { buildIfNeeded } = await import("../app/_server/start/build.mjs");
await stage("build", () => buildIfNeeded());
await stage("playwright", () => runsPackage("@playwright/test/cli.js", ["test"]), { needs: "browser" });

const counts = [readCounts("vitest"), readCounts("playwright")];
const passed = counts.reduce((sum, count) => sum + count.passed, 0);
const failedTests = counts.reduce((sum, count) => sum + count.failed, 0);
const stages = listStages();
const failedStages = stages.filter(({ hasPassed }) => !hasPassed);
// a stage that failed without a failed test, such as the types, is a failure of its own
const isCounted = ({ name }) => (name === "vitest" || name === "playwright") && readCounts(name).failed > 0;
const failed = failedTests + failedStages.filter((failedStage) => !isCounted(failedStage)).length;

console.log("\nTimes");
for (const { name, hasPassed, seconds } of stages) {
  console.log(`  ${seconds.toFixed(1).padStart(6)} s  ${name}${hasPassed ? "" : "  FAILED"}`);
}
console.log(`\n${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
