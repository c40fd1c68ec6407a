import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach } from "vitest";
import { closeDatabase } from "@/prisma/client";
import { migrate } from "@/prisma/tools/migrate.mjs";

/** Gives every test of the file a migrated database of its own, which is gone after it. */
export function freshDatabaseForEachTest(): void {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), "toeline-test-"));
    process.env.DATABASE_URL = `file:${join(folder, "test.db")}`;
    migrate(process.env.DATABASE_URL);
  });
  afterEach(async () => {
    await closeDatabase();
    rmSync(folder, { recursive: true, force: true });
  });
}
