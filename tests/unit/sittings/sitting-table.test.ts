import { describe, expect, test } from "vitest";
import {
  type SectionRun,
  SITTING_STATES,
  type SittingEvent,
  type SittingState,
  type SittingWithRuns,
  stepSitting,
} from "@/lib/sittings";
import { at, run, sitting, tutor } from "../../support/sitting-cases";

const NOW = at("10:30");
const started = { startedAt: at("10:00"), liveWindowId: "window-a" };
/** Kim has handed the plate in at 10:20, Lee is at it. */
const kim = run({ ...started, state: "handed-in", closedAt: at("10:20"), closedBy: "learner" });
const lee = run({ ...started, id: "lee-plate", userId: "lee", state: "running" });
const leeClosed: SectionRun = { ...lee, state: "expired", closedAt: at("10:25"), closedBy: "tutor" };
const waiting = [run(), run({ id: "lee-plate", userId: "lee" })];

const opened = { openedAt: at("09:50") };
const begun = { ...opened, begunAt: at("10:00") };
const closed = { ...begun, closedAt: at("10:25"), wasClosed: true };
const voided = { at: at("10:25"), ...tutor };

/** Written down by hand, not come by through steps. */
const WHOLE: Readonly<Record<SittingState, SittingWithRuns>> = {
  planned: { sitting: sitting(), runs: waiting },
  open: { sitting: sitting({ state: "open", ...opened }), runs: waiting },
  running: { sitting: sitting({ state: "running", ...begun }), runs: [kim, lee] },
  paused: {
    sitting: sitting({ state: "paused", ...begun, pauses: [{ from: at("10:25"), to: null }] }),
    runs: [kim, lee],
  },
  closed: { sitting: sitting({ state: "closed", ...closed }), runs: [kim, leeClosed] },
  released: { sitting: sitting({ state: "released", ...closed, releasedAt: at("10:28") }), runs: [kim, leeClosed] },
  void: {
    sitting: sitting({ state: "void", ...closed, voided }),
    runs: [kim, lee].map((one) => ({ ...one, state: "void", closedAt: at("10:25"), voided })),
  },
};

const EVENTS = {
  plan: { kind: "plan", plannedAt: at("14:00") },
  open: { kind: "open" },
  begin: { kind: "begin" },
  pause: { kind: "pause" },
  resume: { kind: "resume" },
  close: { kind: "close" },
  release: { kind: "release" },
  tick: { kind: "tick" },
  "add run": { kind: "add-run", run: run({ id: "max-plate", userId: "max" }) },
  "re-open": { kind: "re-open", runId: "kim-plate", minutes: 10, ...tutor },
  void: { kind: "void", ...tutor },
} satisfies Record<string, SittingEvent>;

/** ">state": taken, and that is the state then. "=": taken, and nothing has changed. Else why it is refused. */
const TABLE = `
event   | planned       | open          | running       | paused        | closed        | released      | void
plan    | >planned      | >planned      | already-begun | already-begun | is-closed     | is-released   | is-void
open    | >open         | =             | already-begun | already-begun | is-closed     | is-released   | is-void
begin   | not-open      | >running      | =             | is-paused     | is-closed     | is-released   | is-void
pause   | not-yet-begun | not-yet-begun | >paused       | =             | is-closed     | is-released   | is-void
resume  | not-yet-begun | not-yet-begun | =             | >running      | is-closed     | is-released   | is-void
close   | not-yet-begun | not-yet-begun | >closed       | >closed       | =             | is-released   | is-void
release | not-closed    | not-closed    | not-closed    | not-closed    | >released     | =             | is-void
tick    | =             | =             | =             | =             | =             | =             | =
add run | >planned      | >open         | >running      | >paused       | is-closed     | is-released   | is-void
re-open | not-yet-begun | not-yet-begun | >running      | >paused       | >running      | is-released   | is-void
void    | >void         | >void         | >void         | >void         | >void         | >void         | =
`;

const lines = TABLE.trim()
  .split("\n")
  .map((line) => line.split("|").map((cell) => cell.trim()));
const states = lines[0].slice(1);
const rows = lines.slice(1);

describe("what an event makes of a sitting", () => {
  test("the table names every state and every event", () => {
    expect(states).toEqual([...SITTING_STATES]);
    expect(rows.map(([event]) => event)).toEqual(Object.keys(EVENTS));
    expect(rows.every((row) => row.length === states.length + 1)).toBe(true);
  });

  test.each(rows.flatMap(([event, ...cells]) => cells.map((cell, n) => [event, states[n], cell] as const)))(
    "%s while %s: %s",
    (event, state, cell) => {
      const before = WHOLE[state as SittingState];
      const step = stepSitting(before, EVENTS[event as keyof typeof EVENTS], NOW);
      if (cell === "=") expect(step).toEqual({ ok: true, next: before, isChanged: false });
      else if (cell.startsWith(">")) {
        expect(step).toMatchObject({ ok: true, isChanged: true, next: { sitting: { state: cell.slice(1) } } });
        expect(step.next).not.toEqual(before);
      } else expect(step).toEqual({ ok: false, code: cell, next: before, isChanged: false });
    },
  );
});

describe("what a sitting does to its runs", () => {
  const whatComes = (state: SittingState, event: SittingEvent, now = NOW) => stepSitting(WHOLE[state], event, now).next;

  test("closing keeps every open run with its last save, and leaves what is closed or was never started", () => {
    const max = run({ id: "max-plate", userId: "max" });
    const { runs } = stepSitting({ ...WHOLE.running, runs: [kim, lee, max] }, { kind: "close" }, NOW).next;
    expect(runs).toEqual([kim, { ...lee, state: "expired", closedAt: NOW, closedBy: "tutor" }, max]);
  });

  test("one that was over by the clock at 12:00 is closed then, however late the tutor closes", () => {
    const toCome = run({ id: "lee-fillet", userId: "lee", section: "fillet", minutes: 30 });
    const whole = { ...WHOLE.running, runs: [kim, lee, toCome] };
    const { runs, sitting } = stepSitting(whole, { kind: "close" }, at("12:07")).next;
    expect(runs[1]).toMatchObject({ state: "expired", closedAt: at("12:00"), closedBy: "clock" });
    expect(sitting.closedAt).toEqual(at("12:07"));
  });

  test("everybody being done closes nothing before the last deadline; both have one section of 120 min from 10:00", () => {
    const done = { ...WHOLE.running, runs: [kim, leeClosed] };
    const tick = (now: string) => stepSitting(done, { kind: "tick" }, at(now)).next.sitting;
    expect(tick("11:59:59").state).toBe("running");
    expect(tick("12:00")).toMatchObject({ state: "closed", closedAt: at("12:00") });
    expect(tick("18:00")).toMatchObject({ state: "closed", closedAt: at("12:00") });
  });

  test("who has half as much time again and both sections has until 14:07:30: (120 + 15 + 30) min x 1.5 from 10:00", () => {
    const own = { userId: "lee", factor: 1.5 };
    const runs = [kim, run({ ...own, id: "1" }), run({ ...own, id: "2", section: "fillet", minutes: 30 })];
    const tick = (now: string) => stepSitting({ ...WHOLE.running, runs }, { kind: "tick" }, at(now)).next.sitting.state;
    expect([tick("14:07:29"), tick("14:07:30")]).toEqual(["running", "closed"]);
  });

  test("what is void keeps no sitting open", () => {
    const void2 = { ...lee, factor: 2, state: "void" as const, closedAt: at("10:10"), voided };
    const tick = (now: string) => stepSitting({ ...WHOLE.running, runs: [kim, void2] }, { kind: "tick" }, at(now)).next;
    expect(tick("12:00").sitting.state).toBe("closed");
  });

  test("a section that was begun late has all its time: begun at 11:50, it keeps the sitting open until 13:50", () => {
    const runs = [kim, { ...lee, startedAt: at("11:50") }];
    const tick = (now: string) => stepSitting({ ...WHOLE.running, runs }, { kind: "tick" }, at(now)).next;
    expect(tick("13:49:59").sitting.state).toBe("running");
    expect(tick("13:50").sitting.state).toBe("closed");
  });

  test("a paused sitting never closes by itself, and a pause of an hour moves its end by an hour", () => {
    expect(whatComes("paused", { kind: "tick" }, at("23:00")).sitting.state).toBe("paused");
    const resumed = whatComes("paused", { kind: "resume" }, at("11:25"));
    const tick = (now: string) => stepSitting(resumed, { kind: "tick" }, at(now)).next.sitting.state;
    expect([tick("12:59:59"), tick("13:00")]).toEqual(["running", "closed"]);
  });

  test("opening one again after closing lets that one write and nobody start", () => {
    const waiter = run({ id: "max-plate", userId: "max" });
    const whole = { ...WHOLE.closed, runs: [kim, leeClosed, waiter] };
    const step = stepSitting(whole, EVENTS["re-open"], NOW);
    expect(step.next.runs.map(({ state }) => state)).toEqual(["running", "expired", "waiting"]);
    const late = stepSitting(step.next, { kind: "add-run", run: run({ id: "new", userId: "new" }) }, NOW);
    expect(late).toMatchObject({ ok: false, code: "start-is-over" });
    const tick = (now: string) => stepSitting(step.next, { kind: "tick" }, at(now)).next;
    expect(tick("10:39:59").sitting.state).toBe("running");
    expect(tick("10:40").runs[0]).toMatchObject({ state: "expired", closedAt: at("10:40") });
  });

  test("after that it closes when the last section that was started is over, and waits for nobody else", () => {
    const toCome = run({ id: "lee-fillet", userId: "lee", section: "fillet", minutes: 30 });
    const open = stepSitting({ ...WHOLE.closed, runs: [kim, leeClosed, toCome] }, EVENTS["re-open"], NOW).next;
    const tick = (now: string) => stepSitting(open, { kind: "tick" }, at(now)).next.sitting;
    // the plate of both would have been over at 12:00; with a fillet to come, Lee would have had until 12:45
    expect([tick("11:59:59").state, tick("12:00").state]).toEqual(["running", "closed"]);
    // a pause after they were closed moves nothing of theirs
    const pauses = [{ from: at("10:45"), to: at("11:45") }];
    const paused = { ...open, sitting: { ...open.sitting, pauses } };
    expect(stepSitting(paused, { kind: "tick" }, at("12:00")).next.sitting.closedAt).toEqual(at("12:00"));
  });

  test("closing while it is paused ends every pause, and nobody starts in it again", () => {
    const own = { ...lee, state: "paused" as const, pauses: [{ from: at("10:27"), to: null }] };
    const { sitting, runs } = stepSitting({ ...WHOLE.paused, runs: [kim, own] }, { kind: "close" }, NOW).next;
    expect(sitting).toMatchObject({ wasClosed: true, pauses: [{ from: at("10:25"), to: NOW }] });
    expect(runs[1]).toMatchObject({ state: "expired", pauses: [{ from: at("10:27"), to: NOW }] });
  });

  test("another time for an open sitting sends everybody out again", () => {
    expect(whatComes("open", EVENTS.plan).sitting).toMatchObject({ plannedAt: at("14:00"), openedAt: null });
  });

  test("marks are not released while last saves may still be under way", () => {
    const release = (now: string) => stepSitting(WHOLE.closed, { kind: "release" }, at(now));
    expect(release("10:25:10")).toMatchObject({ ok: false, code: "not-settled" });
    expect(release("10:25:11")).toMatchObject({ ok: true });
  });

  test("a void sitting makes every run void and keeps what was written", () => {
    const { runs } = whatComes("running", { kind: "void", ...tutor });
    expect(runs.map(({ state }) => state)).toEqual(["void", "void"]);
    expect(runs[0]?.closedAt).toEqual(at("10:20"));
  });

  test.each([
    ["the same section twice", run({ id: "other" }), "already-in"],
    ["a section that the paper has not", run({ id: "other", section: "fillet" }), "not-in-paper"],
  ] as const)("%s is not taken in", (_case, one, code) => {
    const [first] = WHOLE.running.sitting.paper.sections;
    const paper = { ...WHOLE.running.sitting.paper, sections: first ? [first] : [] };
    const whole = { ...WHOLE.running, sitting: { ...WHOLE.running.sitting, paper } };
    expect(stepSitting(whole, { kind: "add-run", run: one }, NOW)).toMatchObject({ ok: false, code });
    const piece = stepSitting(whole, { kind: "add-run", run: { ...one, section: "plate", isBorderline: true } }, NOW);
    expect(piece.ok).toBe(true);
  });

  test("there is no opening again what is not there", () => {
    const step = stepSitting(WHOLE.running, { ...EVENTS["re-open"], runId: "nobody" }, NOW);
    expect(step).toMatchObject({ ok: false, code: "no-such-run" });
  });
});
