import { mkdirSync } from "node:fs";
import { setTimeout as wait } from "node:timers/promises";
import { parseArgs } from "node:util";
import { OwnServer, PASSWORD, type Session } from "../e2e/support/own-server";
import { LEARNER, TUTOR } from "./people";
import { Timing } from "./timing";

const USAGE = `A whole class in one sitting, at the built server and on a database of its own: everybody comes in and starts, saves every
2 to 5 seconds, and hands in at the same moment. Prints how long the answers took; ends with code 1 if one was wrong, a save was
lost, or pieces or marks did not come in time.

  npm run load -- [--learners 24] [--seconds 90] [--forms own|same] [--port 3992]`;

const { values } = parseArgs({
  options: {
    learners: { type: "string", default: "24" },
    seconds: { type: "string", default: "90" },
    forms: { type: "string", default: "own" },
    port: { type: "string", default: "3992" },
    help: { type: "boolean", short: "h" },
  },
});
if (values.help) {
  console.log(USAGE);
  process.exit(0);
}
const [learners, seconds, port] = [values.learners, values.seconds, values.port].map(Number);
/** Between two saves of somebody who writes, ms. */
const SAVES_EVERY = [2000, 5000] as const;
const MOST_CALLS = 15;
/** A run that is not so far by then has failed, s. */
const PIECES_WITHIN = 1800;
const MARKED_WITHIN = 120;

interface Sitter {
  readonly session: Session;
  readonly windowId: string;
  readonly runId: string;
  readonly practiceId: string;
  sequence: number;
}

const timing = {
  signIn: new Timing("sign-ins, one after the other"),
  enter: new Timing("coming in, all at once"),
  start: new Timing("starts, all at once"),
  surface: new Timing("surfaces, all at once"),
  save: new Timing("saves"),
  handIn: new Timing("hand-ins, all at once"),
};
const log = (text: string) => console.log(`${new Date().toISOString().slice(11, 19)} ${text}`);

mkdirSync("test-results", { recursive: true });
const server = new OwnServer(port, `${process.cwd()}/test-results/load.db`);
server.seed(["tests/load/seed-class.ts", PASSWORD, String(learners), values.forms]);
await server.start();
let isBad = false;
try {
  isBad = await sitTogether();
} finally {
  await server.kill();
}
process.exit(isBad ? 1 : 0);

async function sitTogether(): Promise<boolean> {
  const tutor = await server.signIn(TUTOR);
  const sessions: Session[] = [];
  for (let n = 1; n <= learners; n++) {
    await timing.signIn.of(async () => {
      sessions.push(await server.signIn(LEARNER(n)));
      return { status: 200, body: null };
    });
  }
  const plan = { classId: "class", paperId: "paper", plannedAt: new Date().toISOString(), who: "class" };
  const planned = await tutor.send("POST", "/api/sittings", plan);
  const at = `/api/sittings/${planned.body.id}`;
  const board = tutor.follow(`${at}/live`);
  await tutor.send("POST", `${at}/open`);
  log(`${learners} learners, forms "${values.forms}": waiting for the pieces`);
  const begun = performance.now();
  for (;;) {
    const { pieces } = (await tutor.send("GET", at)).body;
    if (pieces.ready === pieces.all) break;
    if (pieces.failed > 0) await tutor.send("POST", `${at}/renew-pieces`);
    if (performance.now() - begun > PIECES_WITHIN * 1000) {
      throw new Error(`${pieces.ready} of ${pieces.all} pieces within ${PIECES_WITHIN} s`);
    }
    await wait(1000);
  }
  log(`pieces made within ${Math.round((performance.now() - begun) / 1000)} s`);
  await Promise.all(sessions.map((session) => timing.enter.of(() => session.send("POST", `${at}/enter`))));
  await tutor.send("POST", `${at}/begin`);
  const sitters = await Promise.all(sessions.map((session, n) => sitterOf(session, at, n)));
  await Promise.all(
    sitters.map(({ session, runId, windowId }) =>
      timing.start.of(() => session.send("POST", `/api/runs/${runId}/start`, { windowId })),
    ),
  );
  await Promise.all(
    sitters.map(({ session, practiceId }) =>
      timing.surface.of(() => session.fetchBytes(`/api/practice/${practiceId}/surface/fillet`)),
    ),
  );
  // every bench follows its clock
  const lives = sitters.map(({ session, runId }) => session.follow(`/api/runs/${runId}/live`));
  const over = performance.now() + seconds * 1000;
  await Promise.all(sitters.map((sitter) => write(sitter, over)));
  log("all hand in");
  await Promise.all(
    sitters.map((sitter) => {
      const { session, practiceId } = sitter;
      return timing.handIn.of(() => session.send("POST", `/api/practice/${practiceId}/hand-in`, nextVersion(sitter)));
    }),
  );
  const lost = await countLost(sitters);
  const marked = await untilMarked(tutor, at);
  for (const one of [board, ...lives]) one.stop();
  for (const one of Object.values(timing)) console.log(String(one));
  const inTime =
    marked === null ? `not all marked after ${MARKED_WITHIN} s` : `marked within ${marked} s of the hand-in`;
  console.log(`saves lost: ${lost}; sections ${inTime}`);
  return marked === null || lost > 0 || Object.values(timing).some(({ errors }) => errors > 0);
}

async function sitterOf(session: Session, at: string, n: number): Promise<Sitter> {
  const { body } = await session.send("POST", `${at}/enter`);
  const [{ runId, practiceId }] = body.sitting.sections;
  return { session, runId, practiceId, windowId: `window${String(n).padStart(4, "0")}`, sequence: 0 };
}

/** Saves as somebody does who writes one row after the other. */
async function write(sitter: Sitter, over: number): Promise<void> {
  for (;;) {
    const [least, most] = SAVES_EVERY;
    const pause = least + Math.random() * (most - least);
    if (performance.now() + pause > over) break;
    await wait(pause);
    const version = nextVersion(sitter);
    await timing.save.of(() => sitter.session.send("PUT", `/api/practice/${sitter.practiceId}/report`, version));
  }
  await wait(Math.max(0, over - performance.now()));
}

/** The next version of the report, as a bench sends it. */
function nextVersion(sitter: Sitter) {
  const sequence = ++sitter.sequence;
  const call = { face: "fillet", type: "surface-pore", end: null, across: 1, size: 1.5, sentence: "accept" };
  const calls = Array.from({ length: Math.min(sequence, MOST_CALLS) }, (_, n) => ({
    ...call,
    id: `call${n}`,
    start: 10 * n + (sequence % 10),
  }));
  return {
    sequence,
    report: { version: 1, calls, measures: [], statements: [], pieceSentence: null, answers: {} },
    window: { id: sitter.windowId, base: sequence - 1 },
    madeAt: new Date().toISOString(),
  };
}

/** Sections that do not hold the last version that was sent. */
async function countLost(sitters: readonly Sitter[]): Promise<number> {
  let lost = 0;
  for (const { session, runId, sequence } of sitters) {
    const { run } = (await session.send("GET", `/api/runs/${runId}`)).body;
    if (run.sequence !== sequence || run.state !== "handed-in") lost++;
  }
  return lost;
}

/** Seconds until every section is marked; null where that does not come. */
async function untilMarked(tutor: Session, at: string): Promise<number | null> {
  const begun = performance.now();
  for (;;) {
    const { learners: rows } = (await tutor.send("GET", at)).body;
    const runs = rows.flatMap((row: { runs: { mark: object | null }[] }) => row.runs);
    if (runs.every(({ mark }: { mark: object | null }) => mark !== null)) break;
    if (performance.now() - begun > MARKED_WITHIN * 1000) return null;
    await wait(250);
  }
  return Math.round((performance.now() - begun) / 100) / 10;
}
