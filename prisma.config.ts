import { fileURLToPath } from "node:url";
import { defineConfig } from "prisma/config";

// Prisma's native schema engine is a download that closed networks refuse; the WASM engine does the same work.
process.env.PRISMA_SCHEMA_ENGINE_BINARY ??= fileURLToPath(new URL("./prisma/tools/schema-engine.mjs", import.meta.url));
process.env.CHECKPOINT_DISABLE ??= "1";

export default defineConfig({
  schema: "prisma/schema.prisma",
  migrations: { path: "prisma/migrations" },
  datasource: { url: process.env.DATABASE_URL ?? "file:./data/toeline.db" },
});
