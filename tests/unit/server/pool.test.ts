import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { openPool, type Pool } from "@/app/_server/generation/pool";
import { defaultPaper } from "@/lib/sittings";

/** A thread that says when it begins something, and is done with it once it is told to go on. */
const WORKER = `
import { existsSync } from "node:fs";
import { parentPort } from "node:worker_threads";
parentPort.on("message", ({ job, task }) => {
  const name = task.order.seed ?? task.kind;
  parentPort.postMessage({ job, kind: "stage", stage: "begun" });
  const held = setInterval(() => {
    if (!existsSync(new URL("go on " + name, import.meta.url))) return;
    clearInterval(held);
    parentPort.postMessage({ job, kind: "done", done: name });
  }, 5);
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

const end = (...names: readonly string[]) => {
  for (const name of names) writeFileSync(join(folder, `go on ${name}`), "");
};
/** Which of two threads is up first is chance: what they begin together is told in order of names. */
const haveBegun = (...names: readonly string[]) =>
  vi.waitFor(() => expect(begun.slice(-names.length).sort()).toEqual(names), { timeout: 30_000 });

test("what is made ahead takes one thread, until somebody waits for it", async () => {
  const ahead = [face("a cap", false, "a"), face("a root", false, "a"), face("b cap", false, "b")];
  const awaited = face("c cap", true, "c");
  pool.hurry("b");
  // the first was at work already; beside it goes what is waited for
  await haveBegun("a cap", "c cap");
  end("c cap");
  await haveBegun("b cap");
  end("b cap");
  await Promise.all([awaited, ahead[2]]);
  // the thread is free for whoever comes, though something made ahead stands in the line
  const later = face("d cap", true, "d");
  await haveBegun("d cap");
  end("a cap", "a root", "d cap");
  await Promise.all([...ahead, later]);
  expect(begun.slice(3)).toEqual(["d cap", "a root"]);
});

test("a look goes behind learners' pieces, and one that nobody waits for any more is never taken", async () => {
  const first = face("first", true);
  const second = face("second", true);
  const leaving = new AbortController();
  const left = pool.foresee(look, leaving.signal);
  const stays = pool.foresee(look, new AbortController().signal);
  const third = face("third", true);
  leaving.abort(new Error("typed on"));
  await expect(left).rejects.toThrow("typed on");
  await expect(pool.foresee(look, leaving.signal)).rejects.toThrow("typed on");
  await haveBegun("first", "second");
  end("first");
  await haveBegun("third");
  const looked = stays.then(() => begun.push("look"));
  end("outlook", "second", "third");
  await Promise.all([first, second, third, looked]);
  expect(begun).toHaveLength(4);
  expect(begun[3]).toBe("look");
});
