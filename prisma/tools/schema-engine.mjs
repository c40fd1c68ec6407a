#!/usr/bin/env node
// Stands in for Prisma's native schema engine, which is a download that closed networks refuse: the same JSON-RPC over
// standard input and output, answered by the WASM build of the engine and the libsql driver adapter. SQLite only; on
// another database unset PRISMA_SCHEMA_ENGINE_BINARY and let Prisma fetch its own engine.
import { createInterface } from "node:readline";
import { readArguments } from "./schema-engine/arguments.mjs";
import { canConnect } from "./schema-engine/can-connect.mjs";
import { startEngine } from "./schema-engine/engine.mjs";

const settings = readArguments(process.argv.slice(2));

if (settings.wantsVersion) {
  console.log("schema-engine-cli 7.10.0 (WASM)");
} else if (settings.command) {
  process.exit(await canConnect(settings));
} else {
  await serve(await startEngine(settings));
}

/** Answers one request a line, strictly one after the other, until standard input closes. */
async function serve(engine) {
  // an exit through process.exit runs the exit hooks, which close SQLite and leave no journal behind
  process.on("SIGTERM", () => process.exit(0));
  for await (const line of createInterface({ input: process.stdin })) {
    const request = JSON.parse(line);
    const isAcknowledgement = request.method === undefined;
    if (!isAcknowledgement) await answer(engine, request);
  }
  process.exit(0);
}

async function answer(engine, { id, method, params }) {
  try {
    const { result, printed } = await engine.call(method, params);
    if (printed !== undefined) send({ id: `print-${id}`, method: "print", params: { content: printed } });
    send({ id, result });
  } catch (error) {
    const message = error.message ?? String(error);
    const data = { is_panic: false, message, error_code: error.code, meta: error.meta };
    send({ id, error: { code: 4466, message, data } });
  }
}

function send(message) {
  process.stdout.write(`${JSON.stringify({ jsonrpc: "2.0", ...message })}\n`);
}
