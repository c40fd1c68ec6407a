// Applies the checked-in migrations that a SQLite file has not had yet, without Prisma's command line. It keeps Prisma's
// own history table, so that `prisma migrate status` agrees.
import { createHash, randomUUID } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import Database from "libsql";
import { HISTORY_TABLE } from "./history-table.mjs";

const MIGRATIONS = fileURLToPath(new URL("../migrations", import.meta.url));
const BUSY_TIMEOUT_MS = 10_000;

/** Brings the database at a `file:` URL up to date; returns the names of the migrations it applied. */
export function migrate(url, folder = MIGRATIONS) {
  const file = resolve(url.replace(/^file:/, ""));
  mkdirSync(dirname(file), { recursive: true });
  const db = new Database(file, { timeout: BUSY_TIMEOUT_MS });
  try {
    db.pragma("journal_mode = WAL");
    // rebuilding a table needs it off, and inside a transaction the pragma does nothing
    db.pragma("foreign_keys = OFF");
    db.exec(HISTORY_TABLE);
    // the write lock of an immediate transaction makes two starting processes take turns
    return db.transaction(() => applyPending(db, readMigrations(folder))).immediate();
  } finally {
    db.close();
  }
}

function readMigrations(folder) {
  return readdirSync(folder)
    .filter((name) => existsSync(join(folder, name, "migration.sql")))
    .sort()
    .map((name) => {
      const sql = readFileSync(join(folder, name, "migration.sql"), "utf8");
      return { name, sql, checksum: createHash("sha256").update(sql).digest("hex") };
    });
}

function applyPending(db, migrations) {
  const rows = db
    .prepare(
      "SELECT migration_name AS name, checksum, finished_at AS finishedAt FROM _prisma_migrations WHERE rolled_back_at IS NULL",
    )
    .all();
  const unfinished = rows.find((row) => row.finishedAt === null);
  if (unfinished) throw new Error(`Migration ${unfinished.name} failed earlier and has to be resolved first`);
  const checksums = new Map(rows.map((row) => [row.name, row.checksum]));
  const edited = migrations.find(({ name, checksum }) => checksums.has(name) && checksums.get(name) !== checksum);
  if (edited) throw new Error(`Migration ${edited.name} was edited after it was applied to this database`);

  const pending = migrations.filter(({ name }) => !checksums.has(name));
  for (const { name, sql, checksum } of pending) {
    db.exec(sql);
    const now = Date.now();
    db.prepare(
      "INSERT INTO _prisma_migrations (id, checksum, finished_at, migration_name, started_at, applied_steps_count) VALUES (?, ?, ?, ?, ?, 1)",
    ).run(randomUUID(), checksum, now, name, now);
  }
  const broken = db.pragma("foreign_key_check");
  if (broken.length > 0) throw new Error(`Foreign keys broken by a migration: ${JSON.stringify(broken.slice(0, 5))}`);
  return pending.map(({ name }) => name);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const applied = migrate(process.env.DATABASE_URL ?? "file:./data/toeline.db");
  console.log(applied.length > 0 ? `Applied ${applied.join(", ")}` : "The database is up to date");
}
