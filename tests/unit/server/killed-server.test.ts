import { spawn } from "node:child_process";
import { once } from "node:events";
import { expect, test } from "vitest";
import type { Caller } from "@/app/_server/caller";
import { sweepSittings } from "@/app/_server/sittings/sweep";
import { saveReport } from "@/app/_server/use-cases/save-report";
import { EMPTY_REPORT } from "@/lib/report";
import { closeDatabase, database } from "@/prisma/client";
import { readPractice } from "@/prisma/stores/practices";
import { freshDatabaseForEachTest } from "../../support/database";
import { begunSitting, openRoom, runOf, started } from "./sitting-room";

freshDatabaseForEachTest();

/** How many saves are answered before each kill. */
const ROUNDS = [4, 25];

test("a process that is killed in the middle of autosaves has lost nothing that it had answered", async () => {
  const room = await openRoom();
  const id = await begunSitting(room);
  const { practiceId } = await started(id, room.ola);
  // the room's clock says March; the process that is killed goes by its own, so the section is started by that
  await database().$executeRawUnsafe(
    `UPDATE SectionRun SET course = json_set(course, '$.startedAt', '${new Date().toISOString()}')`,
  );
  await database().$executeRawUnsafe(
    `UPDATE Sitting SET course = json_set(course, '$.begunAt', '${new Date().toISOString()}')`,
  );
  let answered = 0;
  for (const count of ROUNDS) {
    await closeDatabase();
    const said = await saveUntilKilled(practiceId, answered + 1, count);
    expect(said.length).toBeGreaterThanOrEqual(count);
    expect(said).toEqual(said.map((_, n) => answered + 1 + n));
    const kept = await readPractice(practiceId);
    // one more may have been stored whose answer never left
    expect([said.at(-1), Number(said.at(-1)) + 1]).toContain(kept?.sequence);
    expect(kept?.report.calls[0].start).toBe(Number(kept?.sequence) % 300);
    answered = kept?.sequence ?? 0;
  }
  // whoever starts again goes on from there, and the sweep finds the sitting as it was left
  const again: Caller = { ...room.ola, clock: () => new Date() };
  const next = { sequence: answered + 1, report: EMPTY_REPORT, window: { id: "window01", base: answered } };
  expect(await saveReport(again, practiceId, next)).toMatchObject({ ok: true });
  await sweepSittings(new Date(), room.source);
  expect((await runOf(id, room.ola)).run).toMatchObject({ state: "running", sequence: answered + 1 });
  // and two hours later it has closed it with that save
  await sweepSittings(new Date(Date.now() + 3 * 3_600_000), room.source);
  expect(await readPractice(practiceId)).toMatchObject({ state: "handed-in", sequence: answered + 1 });
});

test("writes are on the disk before they are answered: write-ahead log, and synchronous FULL", async () => {
  const pragma = async (name: string) =>
    Object.values((await database().$queryRawUnsafe<object[]>(`PRAGMA ${name}`))[0]);
  // https://sqlite.org/pragma.html#pragma_synchronous: 2 is FULL
  expect([...(await pragma("journal_mode")), ...(await pragma("synchronous")).map(Number)]).toEqual(["wal", 2]);
});

/** Runs a process that saves, kills it with SIGKILL after so many answers, and says which saves it had answered. */
async function saveUntilKilled(practiceId: string, first: number, count: number): Promise<readonly number[]> {
  const child = spawn(
    process.execPath,
    ["--import", "tsx", "tests/support/autosave-forever.ts", practiceId, "ola", String(first)],
    { env: process.env, stdio: ["ignore", "pipe", "inherit"] },
  );
  let text = "";
  for await (const chunk of child.stdout.setEncoding("utf8")) {
    text += chunk;
    if (text.includes("refused")) child.kill("SIGKILL");
    if (text.split("\n").length > count) break;
  }
  child.kill("SIGKILL");
  if (child.exitCode === null && child.signalCode === null) await once(child, "exit");
  const lines = text.split("\n").slice(0, -1);
  const refused = lines.find((line) => line.startsWith("refused"));
  if (refused) throw new Error(refused);
  return lines.map(Number);
}
