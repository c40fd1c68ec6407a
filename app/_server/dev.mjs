// npm run dev: the workshop with its pages rebuilt as they change.
import { spawn } from "node:child_process";
import { checkNodeVersion } from "./start/node-version.mjs";

checkNodeVersion();
const { installIfNeeded } = await import("./start/install.mjs");
if (!installIfNeeded()) process.exit(1);
const { pathTo, ROOT } = await import("./start/root.mjs");
const { buildWorker } = await import("./build-worker.mjs");
await buildWorker();
const { prepareSettings } = await import("./start/settings.mjs");
const { host, port } = prepareSettings();
const { migrate } = await import("../../prisma/tools/migrate.mjs");
migrate(process.env.DATABASE_URL);

process.env.NODE_OPTIONS = `${process.env.NODE_OPTIONS ?? ""} --import ${new URL("./start/stamp-address.mjs", import.meta.url)}`;
const next = spawn(
  process.execPath,
  [pathTo("node_modules/next/dist/bin/next"), "dev", "-H", host, "-p", String(port)],
  {
    cwd: ROOT,
    stdio: "inherit",
  },
);
next.on("exit", (code) => process.exit(code ?? 1));
for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, () => next.kill(signal));
