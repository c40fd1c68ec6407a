import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, rmSync } from "node:fs";
import { pathTo, ROOT } from "../../app/_server/start/root.mjs";

/** Runs a program in the checkout with its output shown; true if it ended well. */
export function runs(command, args, env = {}) {
  const { status } = spawnSync(command, args, {
    cwd: ROOT,
    stdio: "inherit",
    shell: process.platform === "win32",
    env: { ...process.env, NEXT_TELEMETRY_DISABLED: "1", CHECKPOINT_DISABLE: "1", ...env },
  });
  return status === 0;
}

/** Runs the command line of an installed package. */
export function runsPackage(script, args, env) {
  return runs(process.execPath, [pathTo(`node_modules/${script}`), ...args], env);
}

const stages = [];

/** Runs one stage, tells how long it took and remembers whether it passed. `needs` names a stage it makes no sense without. */
export async function stage(name, work, { needs } = {}) {
  if (needs && !stages.find((earlier) => earlier.name === needs)?.hasPassed) {
    console.log(`\n== ${name}: not run, because ${needs} failed`);
    stages.push({ name, hasPassed: false, seconds: 0 });
    return;
  }
  console.log(`\n== ${name}`);
  const start = performance.now();
  const hasPassed = (await work()) !== false;
  const seconds = (performance.now() - start) / 1000;
  stages.push({ name, hasPassed, seconds });
  console.log(`== ${name}: ${hasPassed ? "passed" : "FAILED"} in ${seconds.toFixed(1)} s`);
}

/** Every stage with its time. */
export function listStages() {
  return stages;
}

const COUNTERS = {
  // Vitest writes the shape of Jest's report
  vitest: (report) => ({
    passed: report.numPassedTests,
    failed: report.numFailedTests,
    broken: report.success ? 0 : 1,
  }),
  playwright: ({ stats }) => ({ passed: stats.expected + stats.flaky, failed: stats.unexpected, broken: 0 }),
};

/** Reads how many tests passed and failed, from the report that a test runner wrote. */
export function readCounts(runner) {
  const file = reportFile(runner);
  if (!existsSync(file)) return { passed: 0, failed: 0 };
  const { passed, failed, broken } = COUNTERS[runner](JSON.parse(readFileSync(file, "utf8")));
  // a test file that cannot even be loaded has no failed test, but did not pass either
  return { passed, failed: failed === 0 ? broken : failed };
}

export function reportFile(runner) {
  return pathTo(`test-results/${runner}.json`);
}

export function forgetReports() {
  for (const runner of Object.keys(COUNTERS)) rmSync(reportFile(runner), { force: true });
}
