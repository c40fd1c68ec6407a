import { describe, expect, test } from "vitest";
import { RUN_STATES, type RunEvent, type SectionRun, stepRun } from "@/lib/sittings";
import { at, reportAt, run, sitting, tutor } from "../../support/sitting-cases";

/** The sitting began at 10:00, it is 10:30, and nothing has been released. */
const NOW = at("10:30");
const within = { sitting: sitting({ state: "running", openedAt: at("09:50"), begunAt: at("10:00") }), runs: [] };

const begun = { startedAt: at("10:00"), liveWindowId: "window-a" };
const work = { report: reportAt(10), sequence: 3, windowId: "window-a", savedAt: at("10:12") };

/** Written down by hand, not come by through steps. Two ways of being expired have reasons of their own. */
const RUNS = {
  waiting: run(),
  running: run({ ...begun, ...work, state: "running" }),
  paused: run({ ...begun, ...work, state: "paused", pauses: [{ from: at("10:15"), to: null }] }),
  "handed-in": run({ ...begun, ...work, state: "handed-in", closedAt: at("10:20"), closedBy: "learner" }),
  expired: run({ ...begun, ...work, state: "expired", minutes: 20, closedAt: at("10:20"), closedBy: "clock" }),
  "by tutor": run({ ...begun, ...work, state: "expired", closedAt: at("10:20"), closedBy: "tutor" }),
  void: run({ ...begun, ...work, state: "void", closedAt: at("10:20"), voided: { at: at("10:20"), ...tutor } }),
} satisfies Record<string, SectionRun>;

const window = { id: "window-a", base: 3 };
const EVENTS = {
  start: { kind: "start", windowId: "window-b" },
  "take over": { kind: "take-over", windowId: "window-b" },
  save: { kind: "save", sequence: 4, window, madeAt: NOW, report: reportAt(11) },
  "close report": { kind: "close-report", windowId: "window-a", madeAt: NOW },
  "hand in": { kind: "hand-in", windowId: "window-a", madeAt: NOW },
  "see marks": { kind: "see-marks" },
  tick: { kind: "tick" },
  pause: { kind: "pause" },
  resume: { kind: "resume" },
  close: { kind: "close" },
  "add time": { kind: "add-time", minutes: 5, ...tutor },
  "change factor": { kind: "change-factor", factor: 1.5, ...tutor },
  "re-open": { kind: "re-open", minutes: 10, ...tutor },
  void: { kind: "void", ...tutor },
} satisfies Record<string, RunEvent>;

/** ">state": taken, and that is the state then. "=": taken, and nothing has changed. Else why it is refused. */
const TABLE = `
event         | waiting            | running            | paused             | handed-in          | expired            | by tutor           | void
start         | >running           | =                  | =                  | handed-in          | time-is-up         | closed-by-tutor    | void
take over     | not-started        | >running           | >paused            | handed-in          | time-is-up         | closed-by-tutor    | void
save          | not-started        | >running           | paused             | handed-in          | time-is-up         | closed-by-tutor    | void
close report  | not-started        | >running           | paused             | handed-in          | time-is-up         | closed-by-tutor    | void
hand in       | not-started        | >handed-in         | paused             | =                  | time-is-up         | closed-by-tutor    | void
see marks     | marks-not-released | marks-not-released | marks-not-released | marks-not-released | marks-not-released | marks-not-released | void
tick          | =                  | =                  | =                  | =                  | =                  | =                  | =
pause         | not-started        | >paused            | =                  | handed-in          | time-is-up         | closed-by-tutor    | void
resume        | not-started        | =                  | >running           | handed-in          | time-is-up         | closed-by-tutor    | void
close         | not-started        | >expired           | >expired           | =                  | =                  | =                  | =
add time      | >waiting           | >running           | >paused            | handed-in          | time-is-up         | closed-by-tutor    | void
change factor | >waiting           | >running           | >paused            | handed-in          | time-is-up         | closed-by-tutor    | void
re-open       | not-started        | still-open         | still-open         | >running           | >running           | >running           | void
void          | >void              | >void              | >void              | >void              | >void              | >void              | =
`;

const lines = TABLE.trim()
  .split("\n")
  .map((line) => line.split("|").map((cell) => cell.trim()));
const states = lines[0].slice(1);
const rows = lines.slice(1);

describe("what an event makes of a run", () => {
  test("the table names every state and every event", () => {
    expect(states).toEqual(Object.keys(RUNS));
    expect(rows.map(([event]) => event)).toEqual(Object.keys(EVENTS));
    expect(new Set(Object.values(RUNS).map(({ state }) => state))).toEqual(new Set(RUN_STATES));
    expect(rows.every((row) => row.length === states.length + 1)).toBe(true);
  });

  test.each(rows.flatMap(([event, ...cells]) => cells.map((cell, n) => [event, states[n], cell] as const)))(
    "%s while %s: %s",
    (event, state, cell) => {
      const before = RUNS[state as keyof typeof RUNS];
      const step = stepRun(before, EVENTS[event as keyof typeof EVENTS], within, NOW);
      if (cell === "=") expect(step).toEqual({ ok: true, next: before, isChanged: false });
      else if (cell.startsWith(">")) {
        expect(step).toMatchObject({ ok: true, isChanged: true, next: { state: cell.slice(1) } });
        expect(step.next).not.toEqual(before);
      } else expect(step).toEqual({ ok: false, code: cell, next: before, isChanged: false });
    },
  );
});
