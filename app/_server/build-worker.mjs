// Bundles the specimen worker into one file that a worker thread of the built server can load.
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { pathTo, ROOT } from "./start/root.mjs";

export const WORKER_FILE = pathTo("dist/specimen-worker.mjs");

export async function buildWorker() {
  await build({
    absWorkingDir: ROOT,
    entryPoints: [pathTo("app/_server/generation/worker.ts")],
    outfile: WORKER_FILE,
    bundle: true,
    platform: "node",
    format: "esm",
    target: "node20",
    external: ["sharp"],
    sourcemap: true,
    logLevel: "warning",
    // packages written for require find it missing in a module otherwise
    banner: { js: 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);' },
  });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await buildWorker();
