import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { ALONE } from "./tests/support/alone.mjs";

const root = fileURLToPath(new URL(".", import.meta.url));

const alias = [
  { find: "server-only", replacement: `${root}tests/support/server-only.ts` },
  { find: /^@\//, replacement: root },
];

const TESTS = "tests/{architecture,properties,specimens,unit}/**/*.test.{ts,tsx}";

const test = {
  // specimens are made in tests and hooks, and a busy machine takes its time
  testTimeout: 240_000,
  hookTimeout: 240_000,
  setupFiles: ["tests/support/setup.ts"],
  unstubEnvs: true,
  unstubGlobals: true,
};

export default defineConfig({
  test: {
    // a worker for every core: most of the time goes into making specimens
    maxWorkers: availableParallelism(),
    projects: [
      // one file after another in the same process, so that nothing is loaded and compiled anew for each of them
      {
        resolve: { alias },
        test: { ...test, name: "together", include: [TESTS], exclude: [...ALONE], isolate: false },
      },
      { resolve: { alias }, test: { ...test, name: "alone", include: [...ALONE] } },
    ],
  },
});
