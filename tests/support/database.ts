import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "libsql";
import { afterEach, beforeEach } from "vitest";
import { closeDatabase } from "@/prisma/client";
import { migrate } from "@/prisma/tools/migrate.mjs";

/** Gives every test of the file a migrated database of its own, which is gone after it. */
export function freshDatabaseForEachTest(): void {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), "toeline-test-"));
    const file = join(folder, "test.db");
    copyFileSync(emptyDatabase(), file);
    process.env.DATABASE_URL = `file:${file}`;
  });
  afterEach(async () => {
    await closeDatabase();
    rmSync(folder, { recursive: true, force: true });
  });
}

let empty: string | null = null;

/** A migrated database with nothing in it, made once for each process: every migration of every test is a tenth of a test run. */
function emptyDatabase(): string {
  if (empty) return empty;
  const folder = mkdtempSync(join(tmpdir(), "toeline-empty-"));
  const file = join(folder, "empty.db");
  migrate(`file:${file}`);
  // all of it into the one file that is copied
  const database = new Database(file);
  database.pragma("wal_checkpoint(TRUNCATE)");
  database.close();
  process.once("exit", () => rmSync(folder, { recursive: true, force: true }));
  empty = file;
  return file;
}
