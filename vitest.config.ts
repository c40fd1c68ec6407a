import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const root = fileURLToPath(new URL(".", import.meta.url));

export default defineConfig({
  resolve: {
    alias: [
      { find: "server-only", replacement: `${root}tests/support/server-only.ts` },
      { find: /^@\//, replacement: root },
    ],
  },
  test: {
    include: ["tests/{unit,architecture,properties,specimens}/**/*.test.{ts,tsx}"],
    // a worker for every core: most of the time goes into making specimens
    maxWorkers: availableParallelism(),
    testTimeout: 240_000,
    // specimens are made in hooks, and a busy machine takes its time
    hookTimeout: 240_000,
    setupFiles: ["tests/support/setup.ts"],
  },
});
