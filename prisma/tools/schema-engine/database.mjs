import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { PrismaLibSql } from "@prisma/adapter-libsql";

const BUSY_TIMEOUT_MS = 5000;

/** Path of the SQLite file in a `file:` URL, or null for a database in memory. */
export function fileOf(url) {
  if (url === undefined || url === ":memory:") return null;
  if (!url.startsWith("file:"))
    throw new Error(`this schema engine knows SQLite files only, not ${url.split(":")[0]}:`);
  return resolve(url.slice("file:".length));
}

/** A driver adapter factory for the WASM engine. */
export function openFactory(url) {
  const file = fileOf(url);
  if (file !== null) mkdirSync(dirname(file), { recursive: true });
  const factory = factoryFor(file === null ? ":memory:" : `file:${file}`);
  // a database in memory would vanish when the driver reconnects: every shadow database gets a file of its own
  factory.connectToShadowDb = async () => {
    const folder = mkdtempSync(join(tmpdir(), "toeline-shadow-"));
    process.on("exit", () => rmSync(folder, { recursive: true, force: true }));
    return factoryFor(`file:${join(folder, "shadow.db")}`).connect();
  };
  for (const name of ["connect", "connectToShadowDb"]) {
    const open = factory[name].bind(factory);
    factory[name] = async () => acceptScripts(await open());
  }
  return factory;
}

function factoryFor(url) {
  return new PrismaLibSql({ url, timeout: BUSY_TIMEOUT_MS });
}

/** The engine sends whole scripts as one query, of which libsql would run the first statement and drop the rest. */
function acceptScripts(connection) {
  const { executeRaw, queryRaw } = connection;
  connection.executeRaw = async (query) => {
    if (!isScript(query)) return executeRaw.call(connection, query);
    await connection.executeScript(query.sql);
    return 0;
  };
  connection.queryRaw = async (query) => {
    if (!isScript(query)) return queryRaw.call(connection, query);
    await connection.executeScript(query.sql);
    return { columnNames: [], columnTypes: [], rows: [] };
  };
  return connection;
}

function isScript({ sql, args }) {
  if (args.length > 0) return false;
  const bare = sql.replace(/--.*$/gm, "").trim();
  return bare === "" || /;\s*\S/.test(bare);
}
