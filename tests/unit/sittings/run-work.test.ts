import { describe, expect, test } from "vitest";
import { isSettled, mayShowMarks, newRun, type RunEvent, type SectionRun, stepRun } from "@/lib/sittings";
import { at, reportAt, run, sitting, tutor } from "../../support/sitting-cases";

const going = sitting({ state: "running", begunAt: at("10:00") });
const within = { sitting: going, runs: [] };
/** 20 minutes from 10:00; window a has saved number 3 at 10:05. */
const kim = run({
  state: "running",
  minutes: 20,
  startedAt: at("10:00"),
  liveWindowId: "window-a",
  windowId: "window-a",
  sequence: 3,
  report: reportAt(3),
  savedAt: at("10:05"),
});
const save = (
  sequence: number,
  madeAt: string,
  report = reportAt(sequence),
  window = { id: "window-a", base: 3 },
): RunEvent => ({ kind: "save", sequence, window, madeAt: at(madeAt), report });
const step = (one: SectionRun, event: RunEvent, now: string) => stepRun(one, event, within, at(now));

describe("saves in time", () => {
  test.each([
    ["made and come before the deadline", "10:19:59", "10:19:59", "taken"],
    ["made before it and come 10 s after it, the grace", "10:19:59", "10:20:10", "taken"],
    ["made before it and come 11 s after it", "10:19:59", "10:20:11", "time-is-up"],
    ["made after it and come within the grace", "10:20:01", "10:20:02", "time-is-up"],
    ["made at it", "10:20", "10:20", "taken"],
  ] as const)("%s", (_case, madeAt, now, outcome) => {
    const { ok, next, ...rest } = step(kim, save(4, madeAt), now);
    expect(ok ? "taken" : "code" in rest && rest.code).toBe(outcome);
    expect(next.report).toEqual(reportAt(ok ? 4 : 3));
    expect(next.state).toBe(now < "10:20" ? "running" : "expired");
  });

  test("refused or not, a save that comes late finds the run closed at its deadline, and that is to be kept", () => {
    expect(step(kim, save(4, "10:25"), "10:25")).toMatchObject({
      ok: false,
      isChanged: true,
      next: { state: "expired", closedAt: at("10:20"), closedBy: "clock", sequence: 3 },
    });
  });

  test("a hand-in that was under way at the deadline counts, at the deadline; a later one finds the time up", () => {
    const handIn = (madeAt: string): RunEvent => ({ kind: "hand-in", windowId: "window-a", madeAt: at(madeAt) });
    const inTime = step(kim, handIn("10:19:58"), "10:20:04");
    expect(inTime.next).toMatchObject({ state: "handed-in", closedAt: at("10:20"), closedBy: "learner" });
    expect(step(kim, handIn("10:20:01"), "10:20:04")).toMatchObject({ ok: false, code: "time-is-up" });
  });

  test("in a pause only what was made before it is taken, within the grace", () => {
    const paused = step(kim, { kind: "pause" }, "10:10").next;
    expect(step(paused, save(4, "10:09:59"), "10:10:08").ok).toBe(true);
    expect(step(paused, save(4, "10:10:05"), "10:10:08")).toMatchObject({ code: "paused" });
    expect(step(paused, save(4, "10:09:59"), "10:10:11")).toMatchObject({ code: "paused" });
    const resumed = step(paused, { kind: "resume" }, "11:10").next;
    expect(step(resumed, save(4, "10:09:59"), "11:10:01").ok).toBe(true);
  });

  test("a pause of the sitting stops saves just as one of the run does", () => {
    const paused = {
      sitting: { ...going, state: "paused" as const, pauses: [{ from: at("10:10"), to: null }] },
      runs: [],
    };
    expect(stepRun(kim, save(4, "10:11"), paused, at("10:11"))).toMatchObject({ ok: false, code: "paused" });
  });

  test("of two pauses the earlier one counts", () => {
    const own: SectionRun = { ...kim, state: "paused", pauses: [{ from: at("10:10"), to: null }] };
    const all = { ...going, state: "paused" as const, pauses: [{ from: at("10:15"), to: null }] };
    const late = stepRun(own, save(4, "10:12"), { sitting: all, runs: [] }, at("10:15:05"));
    expect(late).toMatchObject({ ok: false, code: "paused" });
  });

  test("marking waits until no late packet can come; a section handed in can be marked at once", () => {
    const expired = step(kim, { kind: "tick" }, "10:20").next;
    expect([isSettled(expired, going, at("10:20:10")), isSettled(expired, going, at("10:20:11"))]).toEqual([
      false,
      true,
    ]);
    expect(isSettled({ ...expired, state: "handed-in", closedBy: "learner" }, going, at("10:20"))).toBe(true);
    expect(isSettled(kim, going, at("10:10"))).toBe(false);
  });
});

describe("windows and numbers", () => {
  test("the same save again changes nothing; the same number with something else is refused", () => {
    expect(step(kim, save(3, "10:06"), "10:06")).toEqual({ ok: true, next: kim, isChanged: false });
    expect(step(kim, save(3, "10:06", reportAt(99)), "10:06")).toMatchObject({ ok: false, code: "stale-save" });
    expect(step(kim, save(2, "10:06"), "10:06")).toMatchObject({ ok: false, code: "stale-save" });
  });

  test("a window that takes over writes, and the older one is read-only until it takes over itself", () => {
    const fromB = (sequence: number, base: number) => save(sequence, "10:08", undefined, { id: "window-b", base });
    expect(step(kim, fromB(4, 3), "10:08")).toMatchObject({ ok: false, code: "other-window" });
    const taken = step(kim, { kind: "take-over", windowId: "window-b" }, "10:07").next;
    const saved = step(taken, fromB(4, 3), "10:08").next;
    expect(saved).toMatchObject({ sequence: 4, windowId: "window-b", report: reportAt(4) });
    expect(step(saved, save(5, "10:09"), "10:09")).toMatchObject({ ok: false, code: "other-window" });
    const back = step(saved, { kind: "take-over", windowId: "window-a" }, "10:10").next;
    // it has not seen what the other one saved as number 4
    expect(step(back, save(5, "10:10"), "10:10")).toMatchObject({ ok: false, code: "stale-save" });
    expect(step(back, save(5, "10:10", undefined, { id: "window-a", base: 4 }), "10:10").ok).toBe(true);
  });

  test("nobody hands in or closes the report from a window that is read-only", () => {
    for (const kind of ["hand-in", "close-report"] as const) {
      expect(step(kim, { kind, windowId: "window-b", madeAt: at("10:08") }, "10:08")).toMatchObject({
        code: "other-window",
      });
    }
  });
});

describe("the report, then the questions", () => {
  const answers = (sequence: number, q1: number) => save(sequence, "10:09", { ...reportAt(3), answers: { q1 } });
  const closed = step(kim, { kind: "close-report", windowId: "window-a", madeAt: at("10:08") }, "10:08").next;

  test("answers come only after the report is closed, and the report then stands", () => {
    expect(step(kim, answers(4, 2), "10:09")).toMatchObject({ ok: false, code: "report-open" });
    expect(step(closed, answers(4, 2), "10:09").next).toMatchObject({
      report: { ...reportAt(3), answers: { q1: 2 } },
      sequence: 4,
    });
    expect(step(closed, save(4, "10:09"), "10:09")).toMatchObject({ ok: false, code: "report-closed" });
  });

  test("the last save of the report, sent once more after closing it, is a repeat and no refusal", () => {
    expect(step(closed, save(3, "10:07"), "10:09")).toEqual({ ok: true, next: closed, isChanged: false });
  });

  test("answers sent twice are a repeat; other answers of the same number are stale", () => {
    const answered = step(closed, answers(4, 2), "10:09").next;
    expect(step(answered, answers(4, 2), "10:10")).toEqual({ ok: true, next: answered, isChanged: false });
    expect(step(answered, answers(4, 1), "10:10")).toMatchObject({ ok: false, code: "stale-save" });
  });

  test("closing it twice changes nothing, and opening the section again does not open the report", () => {
    const again: RunEvent = { kind: "close-report", windowId: "window-a", madeAt: at("10:09") };
    expect(step(closed, again, "10:09").isChanged).toBe(false);
    const handedIn = step(closed, { kind: "hand-in", windowId: "window-a", madeAt: at("10:10") }, "10:10").next;
    const open = step(handedIn, { kind: "re-open", minutes: 5, ...tutor }, "10:30").next;
    expect(open).toMatchObject({ state: "running", reportClosedAt: at("10:08") });
    expect(step(open, save(4, "10:31"), "10:31")).toMatchObject({ code: "report-closed" });
  });
});

describe("starting", () => {
  const wait = run();
  const startIn = (changes: Partial<typeof going>, runs: readonly SectionRun[] = []) => {
    const step = stepRun(
      wait,
      { kind: "start", windowId: "w" },
      { sitting: { ...going, ...changes }, runs },
      at("10:30"),
    );
    return step.ok ? step.next.state : step.code;
  };
  test.each([
    ["planned", "not-begun"],
    ["open", "not-begun"],
    ["running", "running"],
    ["paused", "sitting-paused"],
    ["closed", "sitting-closed"],
    ["released", "sitting-closed"],
    ["void", "sitting-closed"],
  ] as const)("in a sitting that is %s: %s", (state, outcome) => {
    expect(startIn({ state })).toBe(outcome);
  });

  test("not in one that was closed and opened again for others", () => {
    expect(startIn({ wasClosed: true })).toBe("start-is-over");
  });

  test("one section at a time, in any order; what others do is nothing to it", () => {
    const fillet = run({ id: "kim-fillet", section: "fillet", state: "running", startedAt: at("10:10") });
    expect(startIn({}, [wait, fillet])).toBe("other-section-open");
    expect(startIn({}, [wait, { ...fillet, state: "paused" }])).toBe("other-section-open");
    expect(startIn({}, [wait, { ...fillet, state: "handed-in" }])).toBe("running");
    expect(startIn({}, [wait, { ...fillet, userId: "lee" }])).toBe("running");
  });
});

describe("what a tutor changes", () => {
  const reopened = (one: SectionRun, now: string) => step(one, { kind: "re-open", minutes: 7, ...tutor }, now).next;
  const handedIn = step(kim, { kind: "hand-in", windowId: "window-a", madeAt: at("10:09") }, "10:09").next;

  test("a section opened again has the minutes given, whatever was left before", () => {
    const open = reopened(handedIn, "10:30");
    expect(step(open, save(4, "10:36:59"), "10:36:59").ok).toBe(true);
    expect(step(open, { kind: "tick" }, "10:37").next).toMatchObject({ state: "expired", closedAt: at("10:37") });
  });

  test("other extra time would not change those minutes and is refused; minutes on top are given", () => {
    const open = reopened(handedIn, "10:30");
    expect(step(open, { kind: "change-factor", factor: 2, ...tutor }, "10:31")).toMatchObject({ code: "re-opened" });
    const longer = step(open, { kind: "add-time", minutes: 3, ...tutor }, "10:31").next;
    expect(step(longer, { kind: "tick" }, "10:40").next).toMatchObject({ state: "expired", closedAt: at("10:40") });
  });

  test("extra time counts from the start; so little that nothing is left is refused", () => {
    const double = step(kim, { kind: "change-factor", factor: 2, ...tutor }, "10:10").next;
    expect(double.factorChanges).toEqual([{ factor: 2, at: at("10:10"), ...tutor }]);
    expect(step(double, { kind: "tick" }, "10:39:59").next.state).toBe("running");
    const back: RunEvent = { kind: "change-factor", factor: 1, ...tutor };
    expect(step(double, back, "10:19:59").ok).toBe(true);
    expect(step(double, back, "10:20")).toMatchObject({ ok: false, code: "would-end-at-once" });
    expect(step(kim, back, "10:10")).toEqual({ ok: true, next: kim, isChanged: false });
  });

  test("minutes that come after the deadline come too late, whether anybody has looked or not", () => {
    expect(step(kim, { kind: "add-time", minutes: 5, ...tutor }, "10:20")).toMatchObject({ code: "time-is-up" });
  });

  test("nothing is opened again while another section is open, in a closed sitting, or once the marks were seen", () => {
    const event: RunEvent = { kind: "re-open", minutes: 5, ...tutor };
    const fillet = run({ id: "kim-fillet", section: "fillet", state: "running", startedAt: at("10:10") });
    const reopen = (one: SectionRun, changes: Partial<typeof going>, runs: readonly SectionRun[] = []) =>
      stepRun(one, event, { sitting: { ...going, ...changes }, runs }, at("10:30"));
    expect(reopen(handedIn, {}, [fillet])).toMatchObject({ code: "other-section-open" });
    expect(reopen(handedIn, { state: "closed" })).toMatchObject({ code: "sitting-closed" });
    expect(reopen({ ...handedIn, marksSeenAt: at("10:29") }, {})).toMatchObject({ code: "marks-seen" });
    expect(reopen(handedIn, { state: "paused" }).ok).toBe(true);
  });
});

describe("who sees marks", () => {
  const handedIn: SectionRun = { ...kim, state: "handed-in", closedAt: at("10:15"), closedBy: "learner" };
  const atOnce = { ...going, paper: { ...going.paper, feedback: "at-once" as const } };
  test.each([
    ["on release, while the sitting runs", going, handedIn, false],
    ["on release, once closed", { ...going, state: "closed" as const }, handedIn, false],
    ["on release, once released", { ...going, state: "released" as const }, handedIn, true],
    ["at once, while the sitting runs", atOnce, handedIn, true],
    ["at once, before it is closed", atOnce, kim, false],
    ["at once, in a void sitting", { ...atOnce, state: "void" as const }, handedIn, false],
    ["released, what was never sat", { ...going, state: "released" as const }, newRun(kim), false],
    [
      "released, what is void",
      { ...going, state: "released" as const },
      { ...handedIn, state: "void" as const },
      false,
    ],
  ])("%s", (_case, sitting, one, may) => {
    expect(mayShowMarks(one, sitting, at("10:30"))).toBe(may);
    expect(stepRun(one, { kind: "see-marks" }, { sitting, runs: [] }, at("10:15:30")).ok).toBe(may);
  });

  test("seeing them is noted once", () => {
    const see = (one: SectionRun, now: string) =>
      stepRun(one, { kind: "see-marks" }, { sitting: atOnce, runs: [] }, at(now));
    const seen = see(handedIn, "10:16").next;
    expect(seen.marksSeenAt).toEqual(at("10:16"));
    expect(see(seen, "10:17")).toEqual({ ok: true, next: seen, isChanged: false });
  });
});
