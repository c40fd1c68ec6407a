import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { openPool, type Pool } from "@/app/_server/generation/pool";
import { defaultPaper } from "@/lib/sittings";

/** A thread that says when it begins something, and is done with it a moment later. */
const WORKER = `
import { parentPort } from "node:worker_threads";
parentPort.on("message", ({ job, task }) => {
  parentPort.postMessage({ job, kind: "stage", stage: "begun" });
  setTimeout(() => parentPort.postMessage({ job, kind: "done", done: task.order.seed ?? task.kind }), 20);
});`;

let folder: string;
let pool: Pool;
/** Faces in the order in which they were begun. */
const begun: string[] = [];

const face = (seed: string, urgent: boolean, name?: string) =>
  pool.make({ seed, asked: null, face: "cap" }, { urgent, name, onStage: () => void begun.push(seed) });
const [look] = defaultPaper().sections;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "toeline-pool-"));
  writeFileSync(join(folder, "worker.mjs"), WORKER);
  pool = openPool(join(folder, "worker.mjs"), 2);
  begun.length = 0;
});
afterEach(async () => {
  await pool.close();
  rmSync(folder, { recursive: true, force: true });
});

test("what is made ahead takes one thread, until somebody waits for it", async () => {
  const ahead = [face("a cap", false, "a"), face("a root", false, "a"), face("b cap", false, "b")];
  const awaited = face("c cap", true, "c");
  pool.hurry("b");
  await Promise.all([...ahead, awaited]);
  // the first was at work already; beside it goes what is waited for
  expect(begun).toEqual(["a cap", "c cap", "b cap", "a root"]);
});

test("a look goes behind learners' pieces, and one that nobody waits for any more is never taken", async () => {
  const first = face("first", true);
  const second = face("second", true);
  const leaving = new AbortController();
  const left = pool.foresee(look, leaving.signal);
  const stays = pool.foresee(look, new AbortController().signal).then(() => begun.push("look"));
  const third = face("third", true);
  leaving.abort(new Error("typed on"));
  await expect(left).rejects.toThrow("typed on");
  await expect(pool.foresee(look, leaving.signal)).rejects.toThrow("typed on");
  await Promise.all([first, second, third, stays]);
  expect(begun.slice(0, 2).sort()).toEqual(["first", "second"]);
  expect(begun.slice(2)).toEqual(["third", "look"]);
});
