import { randomBytes } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { isAbsolute } from "node:path";
import { WORKER_FILE } from "../build-worker.mjs";
import { pathTo } from "./root.mjs";

const SECRET_FILE = "data/sign-in-secret";

/** Completes the environment that the server reads, and returns where it is to listen. */
export function prepareSettings() {
  const host = process.env.HOST ?? "127.0.0.1";
  const port = readPort(process.env.PORT ?? "3000");
  Object.assign(process.env, {
    // the built server changes its folder, so a path relative to this one would move
    DATABASE_URL: absoluteDatabase(process.env.DATABASE_URL ?? "file:data/toeline.db"),
    AUTH_SECRET: process.env.AUTH_SECRET ?? keptSecret(),
    TOELINE_WORKER: WORKER_FILE,
    HOSTNAME: host,
    PORT: String(port),
    NEXT_TELEMETRY_DISABLED: "1",
  });
  return { host, port };
}

function readPort(text) {
  const port = Number(text);
  if (Number.isInteger(port) && port > 0 && port < 65536) return port;
  console.error(`PORT is "${text}", but a port is a whole number from 1 to 65535, for example PORT=3000.`);
  process.exit(1);
}

function absoluteDatabase(url) {
  if (!url.startsWith("file:")) {
    console.error(`DATABASE_URL is "${url}", but it has to name a file, for example file:data/toeline.db.`);
    process.exit(1);
  }
  const path = url.slice("file:".length);
  return `file:${isAbsolute(path) ? path : pathTo(path)}`;
}

/** What signs the sessions: made once, readable by this user only. Whoever deletes it signs everybody out. */
function keptSecret() {
  const file = pathTo(SECRET_FILE);
  if (!existsSync(file)) {
    mkdirSync(pathTo("data"), { recursive: true });
    writeFileSync(file, randomBytes(32).toString("base64url"), { mode: 0o600, flag: "wx" });
  }
  return readFileSync(file, "utf8").trim();
}
