import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { specimenMaker } from "@/app/_server/generation/specimen-maker";
import { defaultPaper } from "@/lib/sittings";
import { database } from "@/prisma/client";
import { freshDatabaseForEachTest } from "../../support/database";

freshDatabaseForEachTest();

/** A thread that notes which face it begins, holds it until it is told to go on, and then cannot make it. */
const WORKER = `
import { appendFileSync, existsSync } from "node:fs";
import { parentPort } from "node:worker_threads";
const at = (name) => new URL(name, import.meta.url);
parentPort.on("message", ({ job, task }) => {
  appendFileSync(at("begun"), task.order.seed + " " + task.order.face + "\\n");
  const held = setInterval(() => {
    if (!existsSync(at("go"))) return;
    clearInterval(held);
    parentPort.postMessage({ job, kind: "failed", reason: "held back" });
  }, 10);
});`;

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "toeline-maker-"));
  writeFileSync(join(folder, "worker.mjs"), WORKER);
  process.env.TOELINE_WORKER = join(folder, "worker.mjs");
});
afterAll(() => {
  delete process.env.TOELINE_WORKER;
  rmSync(folder, { recursive: true, force: true });
});

const begun = (): readonly string[] =>
  existsSync(join(folder, "begun")) ? readFileSync(join(folder, "begun"), "utf8").trim().split("\n") : [];
const patience = { timeout: 60_000 };

test("a piece that is being made ahead takes the second thread as well once its learner comes to wait for it", async () => {
  const maker = specimenMaker();
  const { piece } = defaultPaper().sections[0];
  const first = await maker.orderAhead("butt", piece, "first");
  await maker.orderAhead("butt", piece, "second");
  await vi.waitFor(() => expect(begun()).toEqual(["first cap"]), patience);
  expect(await maker.stageOf(first.specimenId)).toMatchObject({ state: "making" });

  await maker.hurry(first.specimenId);
  await vi.waitFor(() => expect(begun()).toEqual(["first cap", "first root"]), patience);

  writeFileSync(join(folder, "go"), "");
  await vi.waitFor(
    async () => expect(await database().specimen.count({ where: { state: "failed" } })).toBe(2),
    patience,
  );
  expect(begun().slice(2)).toEqual(["second cap", "second root"]);
  // each is told in the log
  expect(console.error).toHaveBeenCalledTimes(2);
  vi.mocked(console.error).mockClear();
});

test("two learners who take at the same moment leave no more than one of each kind to be made for the shelf", async () => {
  rmSync(join(folder, "go"), { force: true });
  const maker = specimenMaker();
  vi.useFakeTimers({ toFake: ["setTimeout"] });
  try {
    expect(await Promise.all([maker.takeReady("butt"), maker.takeReady("butt")])).toEqual([null, null]);
    vi.advanceTimersByTime(5_000);
  } finally {
    vi.useRealTimers();
  }
  const ordered = () => database().specimen.groupBy({ by: ["kind"], _count: true, orderBy: { kind: "asc" } });
  const one = [
    { kind: "butt", _count: 1 },
    { kind: "fillet", _count: 1 },
  ];
  await vi.waitFor(async () => expect(await ordered()).toHaveLength(2), patience);
  // whatever both counted as missing would be ordered by now
  await new Promise((resolve) => setTimeout(resolve, 300));
  expect(await ordered()).toEqual(one);

  writeFileSync(join(folder, "go"), "");
  await vi.waitFor(
    async () => expect(await database().specimen.count({ where: { state: "failed" } })).toBe(2),
    patience,
  );
  vi.mocked(console.error).mockClear();
});
