import { setTimeout as wait } from "node:timers/promises";
import { expect, test } from "@playwright/test";
import { OwnServer, type Session } from "./support/own-server";

const FILE = "test-results/own-server.db";
const server = new OwnServer(Number(process.env.PORT ?? 3213) + 1000, `${process.cwd()}/${FILE}`);
const WINDOW = "window01";
const MINUTE = 60_000;

// a fillet is made, and a server started three times, on a machine that may be busy
test.setTimeout(300_000);
test.afterAll(() => server.kill());

test("a sitting over the wire: live clocks, a killed server, a second window, extra time, and time that ran out while it was down", async () => {
  server.seed();
  await server.start();
  const tutor = await server.signIn("maren");
  const ilse = await server.signIn("ilse");
  const plan = { classId: "class", paperId: "paper", plannedAt: new Date().toISOString(), who: "class" };
  expect((await ilse.send("POST", "/api/sittings", plan)).status).toBe(403);
  const planned = await tutor.send("POST", "/api/sittings", plan);
  expect(planned.status).toBe(201);
  const at = `/api/sittings/${planned.body.id}`;
  const board = tutor.follow(`${at}/live`);
  await expect.poll(() => board.events.at(-1)?.data.sitting?.state).toBe("planned");
  for (const act of ["open", "begin"]) expect((await tutor.send("POST", `${at}/${act}`)).status).toBe(200);
  const { runId, practiceId } = await readySection(ilse, at);
  await expect
    .poll(() => board.events.at(-1)?.data.learners?.find((one: { userId: string }) => one.userId === "ilse")?.isIn)
    .toBe(true);

  // start, again and again: one start
  const starts = await Promise.all(
    [1, 2, 3].map(() => ilse.send("POST", `/api/runs/${runId}/start`, { windowId: WINDOW })),
  );
  const deadlines = starts.map(({ status, body }) => [status, body.run.clock.deadline]);
  expect(new Set(deadlines.map(String)).size).toBe(1);
  expect(deadlines[0][0]).toBe(200);
  const deadline = Date.parse(deadlines[0][1]);
  expect(Math.abs(deadline - Date.now() - 5 * MINUTE)).toBeLessThan(10_000);

  // the clock of a browser that goes by what is sent is never wrong by more than a second
  const live = ilse.follow(`/api/runs/${runId}/live`);
  await expect.poll(() => live.events.length).toBeGreaterThan(0);
  const errors = live.events.map(({ data, cameAt }) => Math.abs(cameAt - Date.parse(data.now)));
  console.log(`clock error ${Math.max(...errors)} ms`);
  expect(Math.max(...errors)).toBeLessThan(1000);

  // killed in the middle of autosaves
  let answered = 0;
  const saves = (async () => {
    for (let sequence = 1; ; sequence++) {
      const saved = await ilse.send("PUT", `/api/practice/${practiceId}/report`, saveOf(sequence));
      if (saved.status !== 200) throw new Error(JSON.stringify(saved));
      answered = sequence;
    }
  })().catch((error: unknown) => error);
  await expect.poll(() => answered).toBeGreaterThan(8);
  await server.kill();
  // the connection broke off; no save was refused
  expect(await saves).toBeInstanceOf(TypeError);
  await server.start();
  const back = await ilse.send("GET", `/api/runs/${runId}`);
  expect(back.body.run).toMatchObject({ state: "running", clock: { deadline: new Date(deadline).toISOString() } });
  expect([answered, answered + 1]).toContain(back.body.run.sequence);
  console.log(`killed after ${answered} answered saves; ${back.body.run.sequence} kept`);
  const { sequence } = back.body.run;

  // a second window takes over, and the first one is told
  const told = ilse.follow(`/api/runs/${runId}/live`);
  await expect.poll(() => told.events.length).toBeGreaterThan(0);
  await ilse.send("POST", `/api/runs/${runId}/take-over`, { windowId: "window02" });
  await expect.poll(() => told.events.at(-1)?.data.liveWindowId).toBe("window02");
  const late = await ilse.send("PUT", `/api/practice/${practiceId}/report`, saveOf(sequence + 1));
  expect(late).toMatchObject({ status: 409, body: { code: "other-window", sequence } });

  // extra time arrives while it goes
  await tutor.send("POST", `/api/runs/${runId}/add-time`, { minutes: 3, reason: "the lamp went out" });
  await expect
    .poll(() => told.events.filter(({ name }) => name === "run").at(-1)?.data.clock.deadline)
    .toBe(new Date(deadline + 3 * MINUTE).toISOString());

  // time runs out while the server is down: it is closed at its deadline, with the last save, by the next start
  await server.kill();
  server.letTimePass(20 * MINUTE);
  await server.start();
  const closed = async () => (await ilse.send("GET", `/api/runs/${runId}`)).body.run;
  await expect.poll(async () => (await closed()).state).toBe("expired");
  expect(await closed()).toMatchObject({ shut: "time-is-up", sequence, mayKnowMarks: false });
  const boardNow = tutor.follow(`${at}/live`);
  await expect.poll(() => boardNow.events.at(-1)?.data.sitting?.state, { timeout: 30_000 }).toBe("closed");
  await expect.poll(() => runOnBoard(boardNow.events.at(-1)?.data, runId)?.mark).not.toBeNull();
  expect((await ilse.send("PUT", `/api/practice/${practiceId}/report`, saveOf(sequence + 1))).body.code).toBe(
    "time-is-up",
  );
  expect((await tutor.send("POST", `${at}/release`)).status).toBe(200);
  expect((await closed()).mayKnowMarks).toBe(true);
  for (const one of [board, live, told, boardNow]) one.stop();
});

const saveOf = (sequence: number) => ({
  sequence,
  report: {
    version: 1,
    calls: [],
    measures: [{ dimension: "throat", station: 1, value: sequence / 100, at: null }],
    statements: [],
  },
  window: { id: WINDOW, base: sequence - 1 },
  madeAt: new Date().toISOString(),
});

/** Comes in until the piece is made. */
async function readySection(learner: Session, at: string): Promise<{ runId: string; practiceId: string }> {
  for (;;) {
    const { body } = await learner.send("POST", `${at}/enter`);
    const [section] = body.sitting.sections;
    if (section.piece === "ready") return section;
    await wait(500);
  }
}

const runOnBoard = (board: { learners: { runs: { runId: string; mark: object | null }[] }[] }, runId: string) =>
  board.learners.flatMap(({ runs }) => runs).find((run) => run.runId === runId);
