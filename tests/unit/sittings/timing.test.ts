import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clockOf, deadline, elapsed, remaining, type Timing } from "@/lib/sittings";
import { at, run, sitting, tutor } from "../../support/sitting-cases";

const timing = (changes: Partial<Timing> = {}): Timing => ({
  startedAt: at("10:00"),
  minutes: 30,
  factor: 1,
  addedMinutes: [],
  reopenings: [],
  pauses: [],
  ...changes,
});
const added = (minutes: number, when: string) => ({ minutes, at: at(when), ...tutor });
const pause = (from: string, to: string | null) => ({ from: at(from), to: to === null ? null : at(to) });
const MINUTE = 60_000;

describe("30 minutes from 10:00, worked out by hand", () => {
  test.each([
    ["plainly", {}, "10:30"],
    ["with half as much again: 45 min", { factor: 1.5 }, "10:45"],
    [
      "with 10 min on top, which no factor multiplies: 45 + 10",
      { factor: 1.5, addedMinutes: [added(10, "10:05")] },
      "10:55",
    ],
    ["with a quarter more: 37 min 30 s", { factor: 1.25 }, "10:37:30"],
    ["with a pause of 12 min", { pauses: [pause("10:10", "10:22")] }, "10:42"],
    [
      "with 10:10-10:20 and 10:15-10:25 standing, 15 min once",
      { pauses: [pause("10:10", "10:20"), pause("10:15", "10:25")] },
      "10:45",
    ],
    [
      "with one pause inside another, 20 min once",
      { pauses: [pause("10:10", "10:30"), pause("10:15", "10:20")] },
      "10:50",
    ],
    ["with a pause of everybody before the start", { pauses: [pause("09:40", "09:55")] }, "10:30"],
    ["begun while a pause lasted, of which 5 min are left", { pauses: [pause("09:40", "10:05")] }, "10:35"],
    ["with a pause after it was over", { pauses: [pause("10:31", "10:41")] }, "10:30"],
    [
      "closed at 10:20 and opened again at 11:00 with 15 min",
      { reopenings: [{ ...added(15, "11:00"), closedAt: at("10:20") }] },
      "11:15",
    ],
    [
      "the same with 5 min on top before and 3 min after",
      {
        addedMinutes: [added(5, "10:05"), added(3, "11:01")],
        reopenings: [{ ...added(15, "11:00"), closedAt: at("10:20") }],
      },
      "11:18",
    ],
  ] as const)("%s", (_case, changes, end) => {
    expect(deadline(timing(changes), at("23:00"))).toEqual(at(end));
  });

  test("while a pause lasts the deadline moves on and the time left stands", () => {
    const paused = timing({ pauses: [pause("10:10", null)] });
    expect(deadline(paused, at("10:10"))).toEqual(at("10:30"));
    expect(deadline(paused, at("11:00"))).toEqual(at("11:20"));
    expect(remaining(paused, at("11:00"))).toBe(20 * MINUTE);
    expect(elapsed(paused, at("11:00"))).toBe(10 * MINUTE);
  });

  test("once opened again, time spent leaves out the time in which it was closed", () => {
    const again = timing({ reopenings: [{ ...added(15, "11:00"), closedAt: at("10:20") }] });
    expect(elapsed(again, at("11:05"))).toBe(25 * MINUTE);
    expect(remaining(again, at("11:05"))).toBe(10 * MINUTE);
  });

  test("nothing is left once it is over, and not less than nothing", () => {
    expect(remaining(timing(), at("10:29:59"))).toBe(1000);
    expect(remaining(timing(), at("10:30"))).toBe(0);
    expect(remaining(timing(), at("12:00"))).toBe(0);
  });
});

describe("what the clock shows", () => {
  const going = sitting({ state: "running" });
  const started = run({ state: "running", startedAt: at("10:00") });
  test.each([
    [
      "before the start: all there will be, 120 x 1.5 + 5",
      run({ factor: 1.5, addedMinutes: [added(5, "09:00")] }),
      going,
      "not-started",
      185,
      0,
    ],
    ["while it goes", started, going, "going", 90, 30],
    [
      "in a pause of its own from 10:20",
      { ...started, state: "paused" as const, pauses: [pause("10:20", null)] },
      going,
      "standing",
      100,
      20,
    ],
    ["in a pause of everybody from 10:20", started, { ...going, pauses: [pause("10:20", null)] }, "standing", 100, 20],
    [
      "handed in at 10:10",
      { ...started, state: "handed-in" as const, closedAt: at("10:10") },
      going,
      "stopped",
      110,
      10,
    ],
  ] as const)("%s", (_case, one, its, state, left, spent) => {
    const face = clockOf(one, its, at("10:30"));
    expect(face).toMatchObject({ state, remaining: left * MINUTE, elapsed: spent * MINUTE });
  });
});

/** Seconds from the start, so that a loop can count them. */
const second = (s: number) => new Date(at("10:00").getTime() + s * 1000);
const stretch = fc
  .tuple(fc.integer({ min: -100, max: 900 }), fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 9 }))
  .map(([from, length, open]) => ({ from, to: open === 0 ? null : from + length }));

interface Case {
  readonly minutes: number;
  readonly factor: number;
  readonly pauses: readonly { readonly from: number; readonly to: number | null }[];
  /** Seconds at which so many minutes were added. */
  readonly added: readonly (readonly [second: number, minutes: number])[];
  readonly reopening: { readonly closed: number; readonly at: number; readonly minutes: number } | null;
  readonly now: number;
}

const cases: fc.Arbitrary<Case> = fc.record({
  minutes: fc.integer({ min: 1, max: 8 }),
  factor: fc.constantFrom(1, 1.25, 1.5, 2, 3.1),
  pauses: fc.array(stretch, { maxLength: 4 }),
  added: fc.array(fc.tuple(fc.integer({ min: 0, max: 600 }), fc.integer({ min: 1, max: 4 })), { maxLength: 3 }),
  reopening: fc.option(
    fc
      .tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 300 }), fc.integer({ min: 1, max: 5 }))
      .map(([closed, wait, minutes]) => ({ closed, at: closed + wait, minutes })),
  ),
  now: fc.integer({ min: 0, max: 2400 }),
});

const asTiming = ({ minutes, factor, pauses, added, reopening }: Case): Timing => ({
  startedAt: second(0),
  minutes,
  factor,
  pauses: pauses.map(({ from, to }) => ({ from: second(from), to: to === null ? null : second(to) })),
  addedMinutes: added.map(([when, more]) => ({ minutes: more, at: second(when), ...tutor })),
  reopenings: reopening
    ? [{ minutes: reopening.minutes, at: second(reopening.at), closedAt: second(reopening.closed), ...tutor }]
    : [],
});

/** A stop watch that is looked at every second, and told everything only when it happens. */
function watch({ minutes, factor, pauses, added, reopening, now }: Case) {
  const stands = (s: number) => pauses.some(({ from, to }) => s >= from && (to === null || s < to));
  const isClosed = (s: number) => reopening !== null && s >= reopening.closed && s < reopening.at;
  let left: number;
  let begin: number;
  if (reopening) {
    begin = reopening.at;
    left = reopening.minutes * 60;
    for (const [when, more] of added) if (when >= begin) left += more * 60;
  } else {
    begin = 0;
    left = Math.round(minutes * factor * 60);
    for (const [, more] of added) left += more * 60;
  }
  let end: number | null = null;
  for (let s = begin; s < now; s++) {
    if (stands(s)) continue;
    left--;
    if (left === 0 && end === null) end = s + 1;
  }
  let spent = 0;
  for (let s = 0; s < now; s++) if (!stands(s) && !isClosed(s)) spent++;
  return { left: Math.max(0, left), end, spent };
}

describe("against a stop watch that counts seconds", () => {
  const check = (property: (one: Case) => void) =>
    fc.assert(
      fc.property(
        cases.filter(({ reopening, now }) => reopening === null || now >= reopening.at),
        property,
      ),
      { numRuns: 3_000, seed: 20261129 },
    );

  test("time left, time spent and deadline agree", () => {
    check((one) => {
      const { left, end, spent } = watch(one);
      const now = second(one.now);
      expect(remaining(asTiming(one), now)).toBe(left * 1000);
      expect(elapsed(asTiming(one), now)).toBe(spent * 1000);
      // until it is over, the deadline is where it would be if the clock went on from now
      expect(deadline(asTiming(one), now)).toEqual(second(end ?? one.now + left));
    });
  });

  test("minutes on top never bring the deadline nearer, and move it by just as much while the clock goes", () => {
    check((one) => {
      const more = { ...one, added: [...one.added, [Math.max(600, one.reopening?.at ?? 0), 2] as const] };
      const now = second(one.now);
      const [before, after] = [deadline(asTiming(one), now), deadline(asTiming(more), now)];
      expect(after.getTime()).toBeGreaterThanOrEqual(before.getTime() + 2 * MINUTE);
      if (remaining(asTiming(one), now) > 0) expect(after.getTime()).toBe(before.getTime() + 2 * MINUTE);
    });
  });

  test("a larger factor never brings it nearer, and a pause never either", () => {
    check((one) => {
      const end = deadline(asTiming(one), second(one.now)).getTime();
      const now = second(one.now);
      expect(deadline(asTiming({ ...one, factor: one.factor + 0.5 }), now).getTime()).toBeGreaterThanOrEqual(end);
      const pauses = [...one.pauses, { from: 50, to: 90 }];
      expect(deadline(asTiming({ ...one, pauses }), now).getTime()).toBeGreaterThanOrEqual(end);
    });
  });
});
