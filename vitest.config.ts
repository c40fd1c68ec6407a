import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const root = fileURLToPath(new URL(".", import.meta.url));

const alias = [
  { find: "server-only", replacement: `${root}tests/support/server-only.ts` },
  { find: /^@\//, replacement: root },
];

const FILES = ".test.{ts,tsx}";
/** Tests of pure code, which holds nothing from one file to the next. */
const PURE = [
  `tests/{properties,specimens,architecture}/**/*${FILES}`,
  `tests/unit/!(bench|pages|seed|server)/**/*${FILES}`,
  `tests/unit/*${FILES}`,
];
const OTHERS = [`tests/unit/{bench,pages,seed,server}/**/*${FILES}`];

const test = {
  // specimens are made in tests and hooks, and a busy machine takes its time
  testTimeout: 240_000,
  hookTimeout: 240_000,
  setupFiles: ["tests/support/setup.ts"],
};

export default defineConfig({
  test: {
    // a worker for every core: most of the time goes into making specimens
    maxWorkers: availableParallelism(),
    projects: [
      // one file after another in the same process, so that nothing is loaded and compiled anew for each of them
      { resolve: { alias }, test: { ...test, name: "pure", include: PURE, isolate: false } },
      { resolve: { alias }, test: { ...test, name: "with a database or a page", include: OTHERS } },
    ],
  },
});
