import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathTo } from "./root.mjs";
import { runNode } from "./run.mjs";

/** What the built server is made of. */
const SOURCES = [
  "app",
  "instrumentation.ts",
  "lib",
  "prisma",
  "public",
  "seed/demo",
  "next.config.ts",
  "package-lock.json",
  "package.json",
  "postcss.config.mjs",
  "prisma.config.ts",
  "tsconfig.json",
];
const NOT_SOURCES = new Set(["prisma/generated"]);
const FINGERPRINT_FILE = ".next/source-fingerprint";
const SERVER_FILE = ".next/standalone/server.js";

/** Builds pages and specimen worker where there is no build or its sources have changed since; false if that failed. */
export function buildIfNeeded() {
  const fingerprint = fingerprintOfSources();
  if (existsSync(pathTo(SERVER_FILE)) && readIfThere(FINGERPRINT_FILE) === fingerprint) return true;
  console.log("Building Toeline (about half a minute, after every change of its sources) ...");
  const isBuilt =
    runNode([pathTo("node_modules/prisma/build/index.js"), "generate"]) &&
    runNode([pathTo("node_modules/next/dist/bin/next"), "build"], { NODE_ENV: "production" }) &&
    runNode([pathTo("app/_server/build-worker.mjs")]);
  if (isBuilt) writeFileSync(pathTo(FINGERPRINT_FILE), fingerprint);
  return isBuilt;
}

/** By contents, not by time: a fresh checkout of the same sources needs no new build. */
function fingerprintOfSources() {
  const hash = createHash("sha256");
  for (const path of SOURCES.flatMap(filesUnder)) hash.update(`${path}\0`).update(readFileSync(pathTo(path)));
  return hash.digest("hex");
}

function filesUnder(path) {
  if (NOT_SOURCES.has(path)) return [];
  const stat = statSync(pathTo(path), { throwIfNoEntry: false });
  if (!stat) return [];
  if (stat.isFile()) return [path];
  return readdirSync(pathTo(path))
    .sort()
    .flatMap((name) => filesUnder(join(path, name)));
}

function readIfThere(path) {
  return existsSync(pathTo(path)) ? readFileSync(pathTo(path), "utf8") : null;
}
