import { existsSync } from "node:fs";
import { fileOf, openFactory } from "./database.mjs";

/** `cli can-connect-to-database`: returns the exit code, with the reason on standard error as the native engine does. */
export async function canConnect({ command, url }) {
  // Prisma drops the first line of standard error
  log("INFO", { message: "Starting schema engine CLI" });
  if (command !== "can-connect-to-database") {
    log("ERROR", { message: `Unsupported command: ${command}` });
    return 1;
  }
  try {
    const file = fileOf(url);
    if (file !== null && !existsSync(file)) {
      log("ERROR", { message: `Database \`${url}\` does not exist`, error_code: "P1003" });
      return 1;
    }
    const connection = await openFactory(url).connect();
    await connection.queryRaw({ sql: "SELECT 1", args: [], argTypes: [] });
    await connection.dispose();
    return 0;
  } catch (error) {
    log("ERROR", { message: String(error.message ?? error), error_code: "P1001" });
    return 1;
  }
}

function log(level, fields) {
  process.stderr.write(`${JSON.stringify({ level, target: "schema_engine::logger", fields })}\n`);
}
