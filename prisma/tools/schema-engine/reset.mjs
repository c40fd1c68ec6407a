/** Drops every table and view; the WASM engine's own reset leaves them in place on SQLite. */
export async function dropEverything(database) {
  const connection = await database.connect();
  try {
    const { rows } = await connection.queryRaw({
      sql: "SELECT type, name FROM sqlite_master WHERE type IN ('table', 'view') AND name NOT LIKE 'sqlite_%'",
      args: [],
      argTypes: [],
    });
    const drops = rows.map(([type, name]) => `DROP ${type} "${name}"`);
    await connection.executeScript(["PRAGMA foreign_keys=OFF", ...drops].join(";\n"));
  } finally {
    await connection.dispose();
  }
}
