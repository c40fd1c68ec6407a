import { PrismaLibSql } from "@prisma/adapter-libsql";
import { PrismaClient } from "./generated/client/client";

/** libsql waits for nobody unless told to. */
const BUSY_TIMEOUT_MS = 5000;

/** A class that hands in at once stands in line for the one writer that the database has, ms. */
export const PATIENCE = { maxWait: 15_000, timeout: 15_000 };

const shared = globalThis as typeof globalThis & { toelineDatabase?: PrismaClient };

/**
 * The database at DATABASE_URL, opened on first use and once for each process. The start script has switched the file to
 * write-ahead logging, which stays with the file; the driver enforces foreign keys on every connection.
 */
export function database(): PrismaClient {
  shared.toelineDatabase ??= new PrismaClient({
    adapter: new PrismaLibSql({ url: process.env.DATABASE_URL ?? "file:./data/toeline.db", timeout: BUSY_TIMEOUT_MS }),
  });
  return shared.toelineDatabase;
}

/** Closes the database; the next use opens it anew, at what DATABASE_URL is then. */
export async function closeDatabase(): Promise<void> {
  await shared.toelineDatabase?.$disconnect();
  shared.toelineDatabase = undefined;
}

/** True where a write failed because a row with this unique value is already there. */
export function isDuplicate(error: unknown): boolean {
  return error instanceof Error && "code" in error && error.code === "P2002";
}
