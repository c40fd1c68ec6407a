import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { ALONE } from "./tests/support/alone.mjs";

const root = fileURLToPath(new URL(".", import.meta.url));

const alias = [
  { find: "server-only", replacement: `${root}tests/support/server-only.ts` },
  { find: /^@\//, replacement: root },
];

const FILES = "**/*.test.{ts,tsx}";
/** Tests of pure code. */
const PURE = [
  `tests/{architecture,properties,specimens}/${FILES}`,
  `tests/unit/!(bench|pages|seed|server)/${FILES}`,
  "tests/unit/*.test.{ts,tsx}",
];
const OTHERS = [`tests/unit/{bench,pages,seed,server}/${FILES}`];

const test = {
  // specimens are made in tests and hooks, and a busy machine takes its time
  testTimeout: 240_000,
  hookTimeout: 240_000,
  setupFiles: ["tests/support/setup.ts"],
  unstubEnvs: true,
  unstubGlobals: true,
};
// one file after another in the same process, so that nothing is loaded and compiled anew for each of them
const together = { ...test, isolate: false, exclude: [...ALONE] };

export default defineConfig({
  test: {
    // a worker for every core: most of the time goes into making specimens
    maxWorkers: availableParallelism(),
    projects: [
      {
        test: {
          ...together,
          name: "pure",
          include: PURE,
          // Node's own modules: with those of the test runner, which looks up every imported function at every call, making a
          // specimen takes twice as long
          experimental: { viteModuleRunner: false, nodeLoader: false },
          execArgv: ["--import", "tsx"],
        },
      },
      { resolve: { alias }, test: { ...together, name: "with a database or a page", include: OTHERS } },
      { resolve: { alias }, test: { ...test, name: "alone", include: [...ALONE] } },
    ],
  },
});
