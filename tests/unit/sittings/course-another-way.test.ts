import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Section } from "@/lib/results";
import { type CourseAttempt, type CourseRule, courseOf, timeline } from "@/lib/sittings";

/** One decision of a section: what came of an attempt, or of one with its parallel piece. */
interface Decision {
  readonly section: Section;
  /** The place of its sitting among all. */
  readonly sitting: number;
  readonly at: number;
  /** null while a parallel piece is awaited. */
  readonly isPassed: boolean | null;
}

/** The rule once more, written another way: decisions first, then round by round over what is left, cutting it where one ends. */
function plainCourse(attempts: readonly CourseAttempt[], { sections, resits }: CourseRule) {
  const counted = attempts.filter(({ isVoid }) => !isVoid).sort((a, b) => Number(a.at) - Number(b.at));
  const sittings = [...new Set(counted.map(({ sittingId }) => sittingId))];
  let decisions: Decision[] = [];
  for (const [sitting, id] of sittings.entries()) {
    for (const section of sections) {
      const own = counted.filter((attempt) => attempt.section === section && attempt.sittingId === id);
      for (let n = 0; n < own.length; n++) {
        const one = own[n] as CourseAttempt;
        const tenths = Math.round(one.mark * 10);
        const piece = own[n + 1];
        const common = { section, sitting, at: Number(one.at) };
        if (piece?.isBorderline) {
          n++;
          const isPassed = tenths >= 700 || (tenths + Math.round(piece.mark * 10)) / 2 >= 699.5;
          decisions.push({ ...common, isPassed });
        } else if (one.awaitsPiece && tenths < 700) decisions.push({ ...common, isPassed: null });
        else decisions.push({ ...common, isPassed: tenths >= 700 });
      }
    }
  }
  decisions.sort((a, b) => a.sitting - b.sitting || a.at - b.at);
  let round = 1;
  for (;;) {
    // within the round, what comes after a pass of a section is not looked at
    const ends = sections.flatMap((section) => {
      let fails = 0;
      for (const one of decisions) {
        if (one.section !== section) continue;
        if (one.isPassed === true) return [];
        if (one.isPassed === false && ++fails > resits) return [one.sitting];
      }
      return [];
    });
    if (ends.length === 0) break;
    const end = Math.min(...ends);
    decisions = decisions.filter(({ sitting }) => sitting > end);
    round++;
  }
  const standings = sections.map((section) => {
    const own = decisions.filter((one) => one.section === section);
    if (own.some(({ isPassed }) => isPassed === true)) return "passed";
    return own.length === 0 ? "due" : own.at(-1)?.isPassed === null ? "undecided" : "re-sit-due";
  });
  return { round, standings };
}

const attemptsArbitrary = fc.array(
  fc.record({
    section: fc.constantFrom<Section>("plate", "fillet"),
    tenths: fc.oneof(fc.integer({ min: 640, max: 760 }), fc.integer({ min: 0, max: 1000 })),
    isVoid: fc.integer({ min: 0, max: 6 }).map((n) => n === 0),
    isBorderline: fc.integer({ min: 0, max: 3 }).map((n) => n === 0),
    awaitsPiece: fc.integer({ min: 0, max: 8 }).map((n) => n === 0),
    // one of three goes on with the sitting before it
    isNewSitting: fc.integer({ min: 0, max: 2 }).map((n) => n > 0),
  }),
  { maxLength: 14 },
);

describe("against the rule written another way", () => {
  const random = fc.tuple(
    attemptsArbitrary,
    fc.subarray<Section>(["plate", "fillet"], { minLength: 1 }),
    fc.integer({ min: 0, max: 2 }),
  );
  const asAttempts = (
    drawn: readonly (Omit<CourseAttempt, "id" | "at" | "mark" | "passMark" | "sittingId"> & {
      tenths: number;
      isNewSitting: boolean;
    })[],
  ): CourseAttempt[] =>
    drawn.map(({ tenths, isNewSitting: _, ...rest }, n) => ({
      ...rest,
      sittingId: `s${drawn.slice(0, n + 1).filter(({ isNewSitting }) => isNewSitting).length}`,
      id: `a${n}`,
      at: new Date(Date.UTC(2026, 0, 1 + n)),
      mark: tenths / 10,
      passMark: 70,
    }));

  test("rounds and standings agree, for any history", () => {
    let rounds = 0;
    fc.assert(
      fc.property(random, ([drawn, sections, resits]) => {
        const attempts = asAttempts(drawn);
        const course = courseOf(attempts, { sections, resits });
        const plain = plainCourse(attempts, { sections, resits });
        expect([course.round, [...course.standings.values()]]).toEqual([plain.round, plain.standings]);
        rounds = Math.max(rounds, course.round);
      }),
      { numRuns: 10_000, seed: 20261129 },
    );
    expect(rounds).toBeGreaterThan(3);
  });

  test("the order in which attempts come in does not matter, and none is lost", () => {
    const shuffled = random.chain(([drawn, sections, resits]) => {
      const attempts = asAttempts(drawn);
      return fc.tuple(
        fc.constant(attempts),
        fc.shuffledSubarray(attempts, { minLength: attempts.length }),
        fc.constant({ sections, resits }),
      );
    });
    fc.assert(
      fc.property(shuffled, ([attempts, mixed, rule]) => {
        const course = courseOf(attempts, rule);
        expect(courseOf(mixed, rule)).toEqual(course);
        expect(course.attempts.map(({ attempt }) => attempt)).toEqual(attempts);
        expect(timeline(course).flatMap(({ attempts }) => attempts)).toEqual(course.attempts);
      }),
      { numRuns: 2_000, seed: 20261129 },
    );
  });

  test("the order in which the sections of one sitting are taken makes no difference", () => {
    const turns = random.chain(([drawn, sections, resits]) =>
      fc.tuple(
        fc.constant(drawn),
        fc.constant({ sections, resits }),
        fc.array(fc.nat(), { minLength: 14, maxLength: 14 }),
      ),
    );
    fc.assert(
      fc.property(turns, ([drawn, rule, order]) => {
        const attempts = asAttempts(drawn);
        // sections change places within their sitting; those of one section stay in order
        const turned = attempts.map((attempt) => {
          const own = attempts.filter(({ sittingId }) => sittingId === attempt.sittingId);
          const isTurned = order[attempts.indexOf(own[0] as CourseAttempt)] % 2 === 1;
          const inTurn = own.toSorted((a, b) => (a.section === b.section ? 0 : a.section === "plate" ? 1 : -1));
          const at = isTurned ? own[inTurn.indexOf(attempt)]?.at : attempt.at;
          return { ...attempt, at: at ?? attempt.at };
        });
        const [before, after] = [courseOf(attempts, rule), courseOf(turned, rule)];
        expect([after.round, after.standings]).toEqual([before.round, before.standings]);
      }),
      { numRuns: 5_000, seed: 20261129 },
    );
  });

  test("taking out what is void changes nothing, and what is repeated came before", () => {
    fc.assert(
      fc.property(random, ([drawn, sections, resits]) => {
        const attempts = asAttempts(drawn);
        const course = courseOf(attempts, { sections, resits });
        const without = courseOf(
          attempts.filter(({ isVoid }) => !isVoid),
          { sections, resits },
        );
        expect([without.round, without.standings]).toEqual([course.round, course.standings]);
        for (const [n, { repeats, attempt }] of course.attempts.entries()) {
          if (repeats === null) continue;
          const earlier = course.attempts.slice(0, n).find((one) => one.attempt.id === repeats);
          expect(earlier?.attempt.section).toBe(attempt.section);
        }
      }),
      { numRuns: 2_000, seed: 20261129 },
    );
  });
});
