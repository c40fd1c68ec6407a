import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { EMPTY_REPORT } from "@/lib/report";
import {
  clockOf,
  deadline,
  defaultPaper,
  newRun,
  newSitting,
  RUN_STATES,
  type RunEvent,
  remaining,
  type SectionRun,
  SITTING_STATES,
  type SittingEvent,
  type SittingWithRuns,
  stepRun,
  stepSitting,
  timingOf,
} from "@/lib/sittings";
import { at, reportAt, tutor } from "../support/sitting-cases";

const SEED = 20261129;
const RUNS = 500;

/** What somebody does, so many seconds after the last thing that was done. */
type Act = { readonly wait: number } & (
  | { readonly on: "sitting"; readonly event: (now: Date) => SittingEvent }
  | { readonly on: "run"; readonly run: number; readonly event: (now: Date, run: SectionRun) => RunEvent }
);

const LEARNERS = ["kim", "lee"];
/** Short sections, so that clocks run out in a walk: 20 and 10 minutes. */
const paper = {
  ...defaultPaper(),
  breakMinutes: 5,
  sections: defaultPaper().sections.map((one) => ({ ...one, minutes: one.section === "plate" ? 20 : 10 })),
};

const planned = (feedback: "at-once" | "on-release"): SittingWithRuns => ({
  sitting: newSitting({ id: "s", paper: { ...paper, feedback }, plannedAt: at("10:00") }, 10),
  runs: LEARNERS.flatMap((userId, n) =>
    paper.sections.map(({ section, minutes }) =>
      newRun({ id: `${userId}-${section}`, userId, section, minutes, factor: 1 + n / 2, isBorderline: false }),
    ),
  ),
});

const wait = fc.oneof(
  { weight: 3, arbitrary: fc.integer({ min: 1, max: 120 }) },
  { weight: 1, arbitrary: fc.integer({ min: 120, max: 1500 }) },
);
const windowId = fc.constantFrom("window-a", "window-b");

const sittingEvent: fc.Arbitrary<(now: Date) => SittingEvent> = fc.oneof(
  ...(["open", "begin", "pause", "resume", "tick", "open", "begin", "resume"] as const).map((kind) =>
    fc.constant(() => ({ kind })),
  ),
  fc.constantFrom("close" as const, "release" as const, "close" as const).map((kind) => () => ({ kind })),
  fc.constant((now: Date) => ({ kind: "plan" as const, plannedAt: now })),
  fc
    .tuple(fc.constantFrom(...planned("at-once").runs.map(({ id }) => id)), fc.integer({ min: 1, max: 9 }))
    .map(([runId, minutes]) => () => ({ kind: "re-open" as const, runId, minutes, ...tutor })),
);

/** Which report it was can be told from the number: sequences here only rise. */
const runEvent: fc.Arbitrary<(now: Date, run: SectionRun) => RunEvent> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc
      .tuple(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 0, max: 2 }), windowId, fc.boolean())
      .map(([delay, ahead, id, isAnswer]) => (now: Date, run: SectionRun): RunEvent => {
        const sequence = run.sequence + ahead;
        const report = isAnswer ? { ...run.report, answers: { q1: sequence % 4 } } : reportAt(sequence);
        const madeAt = new Date(now.getTime() - delay * 1000);
        return { kind: "save", sequence, window: { id, base: run.sequence }, madeAt, report };
      }),
  },
  { weight: 4, arbitrary: windowId.map((id) => (): RunEvent => ({ kind: "start", windowId: id })) },
  windowId.map((id) => (): RunEvent => ({ kind: "take-over", windowId: id })),
  fc.tuple(fc.constantFrom("hand-in" as const, "close-report" as const), windowId, fc.integer({ min: 0, max: 9 })).map(
    ([kind, id, delay]) =>
      (now: Date): RunEvent => ({ kind, windowId: id, madeAt: new Date(now.getTime() - delay * 1000) }),
  ),
  fc
    .constantFrom("see-marks" as const, "tick" as const, "pause" as const, "resume" as const, "close" as const)
    .map((kind) => (): RunEvent => ({ kind })),
  fc.integer({ min: 1, max: 9 }).map((minutes) => (): RunEvent => ({ kind: "add-time", minutes, ...tutor })),
  fc.integer({ min: 1, max: 9 }).map((minutes) => (): RunEvent => ({ kind: "re-open", minutes, ...tutor })),
  fc.constantFrom(1, 1.25, 2).map((factor) => (): RunEvent => ({ kind: "change-factor", factor, ...tutor })),
);

const run = fc.integer({ min: 0, max: 3 });
const onSitting = (event: fc.Arbitrary<(now: Date) => SittingEvent>) =>
  fc.record({ wait, on: fc.constant("sitting" as const), event });
const onRun = (event: fc.Arbitrary<(now: Date, run: SectionRun) => RunEvent>) =>
  fc.record({ wait, on: fc.constant("run" as const), run, event });
const toVoid = fc.constant(() => ({ kind: "void" as const, ...tutor }));

const act: fc.Arbitrary<Act> = fc.oneof(
  { weight: 10, arbitrary: onSitting(sittingEvent) },
  { weight: 40, arbitrary: onRun(runEvent) },
  // rarely, since nothing happens to it any more
  { weight: 1, arbitrary: onRun(toVoid) },
  { weight: 1, arbitrary: onSitting(toVoid) },
);
/** Most walks begin with a sitting that has begun. */
const acts = fc
  .tuple(fc.integer({ min: 0, max: 9 }), fc.array(act, { minLength: 5, maxLength: 40 }))
  .map(([n, rest]) => (n === 0 ? rest : [...BEGIN, ...rest]));
const BEGIN: readonly Act[] = (["open", "begin"] as const).map((kind) => ({
  wait: 1,
  on: "sitting",
  event: () => ({ kind }),
}));
const starts = fc.constantFrom<"at-once" | "on-release">("at-once", "on-release").map(planned);

interface Moment {
  readonly now: Date;
  readonly before: SittingWithRuns;
  readonly after: SittingWithRuns;
  readonly act: Act;
  readonly ok: boolean;
}

/** As the server does it: the clock of the sitting first, then what is asked, then the clock again. */
function doAct(whole: SittingWithRuns, act: Act, now: Date): { next: SittingWithRuns; ok: boolean } {
  if (act.on === "sitting") return stepSitting(whole, act.event(now), now);
  const timed = stepSitting(whole, { kind: "tick" }, now).next;
  const run = timed.runs[act.run];
  const { next, ok } = stepRun(run, act.event(now, run), timed, now);
  const changed = { ...timed, runs: timed.runs.map((one) => (one.id === run.id ? next : one)) };
  return { next: stepSitting(changed, { kind: "tick" }, now).next, ok };
}

function walk(start: SittingWithRuns, acts: readonly Act[], ticksEvery: number | null = null): Moment[] {
  let whole = start;
  let time = at("10:00").getTime();
  return acts.map((act) => {
    const until = time + act.wait * 1000;
    if (ticksEvery !== null) {
      for (time += ticksEvery * 1000; time < until; time += ticksEvery * 1000) {
        whole = stepSitting(whole, { kind: "tick" }, new Date(time)).next;
      }
    }
    time = until;
    const now = new Date(time);
    const before = whole;
    const { next, ok } = doAct(whole, act, now);
    whole = next;
    return { now, before, after: next, act, ok };
  });
}

const check = (property: (moments: Moment[], start: SittingWithRuns, acts: readonly Act[]) => void, numRuns = RUNS) =>
  fc.assert(
    fc.property(starts, acts, (start, all) => property(walk(start, all), start, all)),
    { numRuns, seed: SEED },
  );

const isOpen = ({ state }: SectionRun) => state === "running" || state === "paused";
const runOf = (whole: SittingWithRuns, id: string) => whole.runs.find((one) => one.id === id) as SectionRun;

describe("whatever people do in a sitting", () => {
  it("walks come through every state of sittings and runs, and both by learner, clock and tutor", () => {
    const seen = new Set<string>();
    check((moments) => {
      for (const { after } of moments) {
        seen.add(`sitting ${after.sitting.state}`);
        for (const { state, closedBy, reopenings } of after.runs) {
          seen.add(`run ${state}`);
          seen.add(`by ${closedBy}`);
          if (reopenings.length > 0) seen.add("re-opened");
        }
      }
    });
    const all = [...SITTING_STATES.map((state) => `sitting ${state}`), ...RUN_STATES.map((state) => `run ${state}`)];
    expect([...seen]).toEqual(
      expect.arrayContaining([...all, "by learner", "by clock", "by tutor", "by null", "re-opened"]),
    );
  });

  it("a run is open only in a sitting that runs or is paused, one a learner at most, and never beyond its deadline", () => {
    check((moments) => {
      for (const { now, after } of moments) {
        const { sitting, runs } = stepSitting(after, { kind: "tick" }, now).next;
        const open = runs.filter(isOpen);
        if (sitting.state !== "running" && sitting.state !== "paused") expect(open).toEqual([]);
        expect(new Set(open.map(({ userId }) => userId)).size).toBe(open.length);
        for (const one of open) {
          const timing = timingOf(one, sitting);
          if (timing === null) throw new Error("open and never started");
          expect(deadline(timing, now).getTime()).toBeGreaterThan(now.getTime());
          expect(remaining(timing, now)).toBeGreaterThan(0);
        }
      }
    });
  });

  it("what a run says of itself agrees: times there when they should be, one lasting pause while it is paused", () => {
    check((moments) => {
      for (const { now, after } of moments) {
        for (const one of after.runs) {
          const isClosed = !isOpen(one) && one.state !== "waiting";
          expect(one.closedAt !== null).toBe(isClosed);
          expect(one.startedAt === null).toBe(one.liveWindowId === null);
          if (isOpen(one) || one.state === "handed-in" || one.state === "expired") expect(one.startedAt).not.toBeNull();
          if (one.state === "handed-in") expect(one.closedBy).toBe("learner");
          if (one.state === "expired") expect(["clock", "tutor"]).toContain(one.closedBy);
          if (isOpen(one) || one.state === "waiting") expect(one.closedBy).toBeNull();
          expect(one.pauses.filter(({ to }) => to === null)).toHaveLength(one.state === "paused" ? 1 : 0);
          for (const [n, pause] of one.pauses.entries()) {
            const next = one.pauses[n + 1];
            if (next) expect(next.from.getTime()).toBeGreaterThanOrEqual((pause.to as Date).getTime());
          }
          if (one.closedAt !== null) expect(one.closedAt.getTime()).toBeLessThanOrEqual(now.getTime());
        }
        const standing = after.sitting.pauses.filter(({ to }) => to === null).length;
        expect(standing).toBe(after.sitting.state === "paused" ? 1 : 0);
      }
    });
  });

  it("time spent, time standing and time closed make up the time since the start, second for second", () => {
    check((moments) => {
      const last = moments.at(-1);
      if (!last) return;
      const { after, now } = last;
      for (const one of after.runs) {
        if (one.startedAt === null) continue;
        const until = (one.closedAt ?? now).getTime();
        let spent = 0;
        const holds = (from: Date, to: Date | null, t: number) =>
          from.getTime() <= t && (to === null || t < to.getTime());
        const pauses = [...one.pauses, ...after.sitting.pauses];
        for (let t = one.startedAt.getTime(); t < until; t += 1000) {
          const stands = pauses.some(({ from, to }) => holds(from, to, t));
          const closed = one.reopenings.some(({ closedAt, at }) => holds(closedAt, at, t));
          if (!stands && !closed) spent += 1000;
        }
        expect(clockOf(one, after.sitting, now).elapsed).toBe(spent);
        // by the clock it is closed when all the time it was given is spent
        if (one.closedBy === "clock" && one.reopenings.length === 0) {
          const given = one.minutes * one.factor + one.addedMinutes.reduce((sum, { minutes }) => sum + minutes, 0);
          expect(spent).toBe(given * 60_000);
        }
      }
    }, 300);
  });

  it("what is handed in never changes, but by opening it again, by making it void, and by the marks being seen", () => {
    check((moments) => {
      for (const { before, after } of moments) {
        for (const one of before.runs) {
          const then = runOf(after, one.id);
          if (one.state !== "handed-in" || then === one) continue;
          expect(["running", "void", "handed-in"]).toContain(then.state);
          const { report, sequence, savedAt, startedAt } = then;
          expect({ report, sequence, savedAt, startedAt }).toEqual({
            report: one.report,
            sequence: one.sequence,
            savedAt: one.savedAt,
            startedAt: one.startedAt,
          });
          if (then.state === "handed-in") expect({ ...then, marksSeenAt: null }).toEqual({ ...one, marksSeenAt: null });
          if (then.state === "running") expect(one.marksSeenAt).toBeNull();
        }
      }
    });
  });

  it("every save that was accepted is kept until a later one is, whatever happens in between", () => {
    check((moments) => {
      const kept = new Map<string, { report: unknown }>();
      for (const { now, before, after, act, ok } of moments) {
        const run = act.on === "run" ? (before.runs[act.run] as SectionRun) : null;
        const event = act.on === "run" && run ? act.event(now, run) : null;
        if (run && event?.kind === "save" && ok) {
          kept.set(run.id, { report: event.report });
        }
        for (const [id, work] of kept) expect(runOf(after, id)).toMatchObject(work);
      }
      for (const one of moments.at(-1)?.after.runs ?? []) {
        if (!kept.has(one.id)) expect([one.report, one.sequence]).toEqual([EMPTY_REPORT, 0]);
      }
    });
  });

  it("no work is taken that was made after the deadline, or while the clock stood", () => {
    check((moments) => {
      for (const { now, before, after, act, ok } of moments) {
        if (act.on !== "run" || !ok) continue;
        const run = before.runs[act.run] as SectionRun;
        const event = act.event(now, run);
        const then = runOf(after, run.id);
        if (event.kind !== "save" || then.sequence === run.sequence) continue;
        if (then.closedAt !== null) expect(event.madeAt.getTime()).toBeLessThanOrEqual(then.closedAt.getTime());
        const open = [...then.pauses, ...after.sitting.pauses].filter(({ to }) => to === null);
        for (const { from } of open) expect(event.madeAt.getTime()).toBeLessThanOrEqual(from.getTime());
      }
    });
  });

  it("asking twice for what is not to happen twice gives the same answer and changes nothing", () => {
    const once = new Set(["save", "add-time", "re-open", "add-run", "plan"]);
    check((moments) => {
      for (const { now, after, act, ok } of moments) {
        const event = act.on === "run" ? act.event(now, after.runs[act.run] as SectionRun) : act.event(now);
        if (once.has(event.kind) || !ok) continue;
        const again = doAct(after, act, now);
        expect(again.ok).toBe(true);
        expect(again.next).toEqual(after);
      }
    });
  });

  it("what is refused changes nothing beyond what the clock had done", () => {
    check((moments) => {
      for (const { now, before, after, ok } of moments) {
        if (!ok) expect(after).toEqual(stepSitting(before, { kind: "tick" }, now).next);
      }
    });
  });

  it("it makes no difference how often somebody looks at the clock", () => {
    check((moments, start, acts) => {
      const looked = walk(start, acts, 7);
      expect(looked.map(({ ok }) => ok)).toEqual(moments.map(({ ok }) => ok));
      expect(looked.at(-1)?.after).toEqual(moments.at(-1)?.after);
    }, 300);
  });

  it("minutes on top move the deadline of whoever is at work by just as much", () => {
    check((moments) => {
      const last = moments.at(-1);
      if (!last) return;
      const { now } = last;
      const whole = stepSitting(last.after, { kind: "tick" }, now).next;
      for (const one of whole.runs.filter(isOpen)) {
        const longer = stepRun(one, { kind: "add-time", minutes: 4, ...tutor }, whole, now).next;
        const [a, b] = [one, longer].map((run) => clockOf(run, whole.sitting, now).deadline?.getTime() ?? Number.NaN);
        expect(b).toBe((a as number) + 4 * 60_000);
      }
    });
  });

  it("released is for good, and void as well", () => {
    check((moments) => {
      for (const { before, after } of moments) {
        if (before.sitting.state === "void") expect(after).toEqual(before);
        if (before.sitting.state === "released") expect(["released", "void"]).toContain(after.sitting.state);
      }
    });
  });
});
