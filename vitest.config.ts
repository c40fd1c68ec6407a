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
    testTimeout: 120_000,
    // specimens are made in hooks, and a busy machine takes its time
    hookTimeout: 120_000,
    setupFiles: ["tests/support/setup.ts"],
  },
});
