import { cpSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { networkInterfaces } from "node:os";
import { setTimeout as wait } from "node:timers/promises";
import { pathToFileURL } from "node:url";
import { migrate } from "../../../prisma/tools/migrate.mjs";
import { stampAddresses } from "./address-stamp.mjs";
import { pathTo } from "./root.mjs";
import { prepareSettings } from "./settings.mjs";

/**
 * Completes the settings and stops with a plain sentence where the server could not start with them. `isFresh` empties
 * its database, which only a test database allows.
 */
export async function prepare({ isFresh }) {
  const place = prepareSettings();
  await refuseTakenPort(place);
  if (isFresh) removeTestDatabase();
  return place;
}

/** Runs the built server. */
export async function serve({ host, port }) {
  const applied = migrate(process.env.DATABASE_URL);
  if (applied.length > 0) console.log(`Database prepared: ${applied.join(", ")}`);

  const built = pathTo(".next/standalone");
  cpSync(pathTo(".next/static"), `${built}/.next/static`, { recursive: true });
  cpSync(pathTo("public"), `${built}/public`, { recursive: true });
  process.env.NODE_ENV = "production";
  stampAddresses({ trustsProxy: process.env.TRUST_PROXY === "1" });
  await import(pathToFileURL(`${built}/server.js`).href);
  await sayAddress(host, port);
}

async function refuseTakenPort({ host, port }) {
  const problem = await new Promise((resolve) => {
    const probe = createServer()
      .once("error", resolve)
      .once("listening", () => probe.close(() => resolve(null)))
      .listen(port, host);
  });
  if (problem === null) return;
  const reason =
    problem.code === "EADDRINUSE"
      ? `Port ${port} is taken by another program, perhaps by a Toeline that runs already.\nStop that one, or use another port: PORT=${port + 1} npm start`
      : `Cannot listen on ${host}, port ${port}: ${problem.message}`;
  console.error(reason);
  process.exit(1);
}

function removeTestDatabase() {
  const file = process.env.DATABASE_URL.slice("file:".length);
  if (!file.startsWith(pathTo("test-results"))) {
    console.error("--fresh deletes the database, so it works only with a DATABASE_URL under test-results/.");
    process.exit(1);
  }
  for (const ending of ["", "-wal", "-shm"]) rmSync(file + ending, { force: true });
}

async function sayAddress(host, port) {
  const isEverywhere = host === "0.0.0.0" || host === "::";
  const own = `http://${isEverywhere || host === "127.0.0.1" ? "localhost" : host}:${port}`;
  while (!(await isAnswering(isEverywhere ? `http://127.0.0.1:${port}` : `http://${host}:${port}`))) await wait(100);
  console.log(`\nToeline is open at ${own}`);
  if (isEverywhere)
    for (const address of networkAddresses()) console.log(`On this network:   http://${address}:${port}`);
  else console.log("Only this computer reaches it. For the whole workshop: HOST=0.0.0.0 npm start");
  console.log("Stop it with Ctrl+C.\n");
}

async function isAnswering(url) {
  return fetch(`${url}/api/health`).then(
    ({ ok }) => ok,
    () => false,
  );
}

function networkAddresses() {
  return Object.values(networkInterfaces())
    .flat()
    .filter(({ family, internal }) => family === "IPv4" && !internal)
    .map(({ address }) => address);
}
