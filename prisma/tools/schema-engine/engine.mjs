import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { bindMigrationAwareSqlAdapterFactory } from "@prisma/driver-adapter-utils";
import * as wasm from "@prisma/schema-engine-wasm/schema_engine_bg";
import { openFactory } from "./database.mjs";
import { ensureHistoryTable, NEEDS_HISTORY } from "./history.mjs";
import { dropEverything } from "./reset.mjs";

/** Starts the WASM engine; `call` runs one of its methods and returns its result and what it wants printed. */
export async function startEngine({ datamodels, url }) {
  await loadWasm();
  const files = datamodels.map((path) => [path, readFileSync(path, "utf8")]);
  const database = openFactory(url);
  const factory = bindMigrationAwareSqlAdapterFactory(database);
  const engine = await wasm.SchemaEngine.new({ datamodels: files.length > 0 ? files : undefined }, () => {}, factory);
  // looked for once: later on the engine holds SQLite's exclusive lock
  let isHistoryChecked = false;

  return {
    async call(method, params) {
      const name = method === "getDatabaseVersion" ? "version" : method;
      if (typeof engine[name] !== "function") throw new Error(`Unsupported: ${method}`);
      if (NEEDS_HISTORY.has(name) && !isHistoryChecked) {
        isHistoryChecked = true;
        await ensureHistoryTable(database);
      }
      if (name === "reset") {
        await dropEverything(database);
        return { result: null };
      }
      const result = await engine[name](params).catch((error) => {
        throw withCause(error, factory.errorRegistry);
      });
      if (name === "diff") return { result: { exitCode: result.exitCode }, printed: result.stdout ?? undefined };
      return { result: result ?? null };
    },
  };
}

async function loadWasm() {
  const folder = dirname(createRequire(import.meta.url).resolve("@prisma/schema-engine-wasm"));
  const bytes = readFileSync(join(folder, "schema_engine_bg.wasm"));
  const { instance } = await WebAssembly.instantiate(bytes, { "./schema_engine_bg.js": wasm });
  wasm.__wbg_set_wasm(instance.exports);
  instance.exports.__wbindgen_start();
}

/** The engine names errors of the driver by number only; the registry has the words. */
function withCause(error, registry) {
  const match = /External error id#(\d+)/.exec(error.message ?? "");
  const cause = match && registry?.consumeError?.(Number(match[1]))?.error;
  if (cause) {
    const detail = cause.cause ? ` (${JSON.stringify(cause.cause)})` : "";
    error.message = error.message.replace(match[0], `${cause.message ?? cause}${detail}`);
  }
  return error;
}
