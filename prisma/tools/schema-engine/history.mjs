import { HISTORY_TABLE } from "../history-table.mjs";

/** Methods that the WASM engine refuses on SQLite without a history table, where the native engine would create it. */
export const NEEDS_HISTORY = new Set([
  "applyMigrations",
  "createMigration",
  "devDiagnostic",
  "diagnoseMigrationHistory",
  "evaluateDataLoss",
  "markMigrationApplied",
  "markMigrationRolledBack",
]);

/** Creates the history table in an empty database and refuses one that has tables but no history. */
export async function ensureHistoryTable(database) {
  const connection = await database.connect();
  try {
    const { rows } = await connection.queryRaw({
      sql: "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'",
      args: [],
      argTypes: [],
    });
    const names = rows.map(([name]) => name);
    if (names.includes("_prisma_migrations")) return;
    if (names.length > 0) {
      const error = new Error(
        "The database has tables but no migration history. Delete the file, or baseline it with `prisma migrate resolve`.",
      );
      throw Object.assign(error, { code: "P3005" });
    }
    await connection.executeScript(HISTORY_TABLE);
  } finally {
    await connection.dispose();
  }
}
