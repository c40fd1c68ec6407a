import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { IMPERFECTION_TYPES, type ImperfectionType } from "@/lib/imperfections";
import { clopperPearsonInterval, poissonInterval, wilsonInterval } from "@/lib/math";
import {
  addObservations,
  addSections,
  addTallies,
  afterSection,
  type Candidate,
  chooseNext,
  cohenKappa,
  confusions,
  detectionAgainstClutter,
  detectionByType,
  detectionCurve,
  EMPTY_LEARNER_TALLY,
  EMPTY_TALLY,
  EMPTY_TYPE_TALLY,
  falseCallsOf,
  findsBySize,
  learnerInOrderSchema,
  NEW_IN_ORDER,
  NEW_LEARNER,
  namingMatrix,
  observationsOf,
  overviewOf,
  overviewSchema,
  placing,
  type SectionObservations,
  sectionObservationsSchema,
  sizingByKind,
  squareTable,
  sumOverviews,
  type Tally,
  takenIn,
  typeTallySchema,
} from "@/lib/progress";
import { randomStream } from "@/lib/random";
import { EMPTY_REPORT } from "@/lib/report";
import { DEFAULT_SETTINGS, markSection } from "@/lib/scoring";
import { isFilletTruth, seenItems } from "@/lib/specimen";
import { drawCandidate, typesOf } from "../support/simulated-learner";
import { syntheticFillet, syntheticPlate } from "../support/synthetic-truths";

/** A piece as it is marked: some imperfections called, some of them by another name, and some calls on nothing. */
function marked(seed: number): SectionObservations {
  const random = randomStream(`marked ${seed}`);
  const drawn = random.chance(0.3) ? syntheticFillet(random) : syntheticPlate(random);
  // synthetic truths have no outlines, by which clutter is touched and the extent of a point is seen
  const outlined = <Item extends { start: number; end: number; across: number }>(item: Item) => ({
    ...item,
    outline: [
      [item.start - 1, item.across - 1],
      [item.end + 1, item.across - 1],
      [item.end + 1, item.across + 1],
      [item.start - 1, item.across + 1],
    ] as const,
  });
  // every fifth has nothing to find
  const items = drawn.items.filter(({ neutral }) => neutral || seed % 5 !== 0);
  const truth = { ...drawn, items: items.map(outlined), clutter: drawn.clutter.map(outlined) };
  const length = truth.joint.length;
  const within = (x: number) => Math.min(length, Math.max(0, x));
  const called = truth.items
    .filter(() => random.chance(0.6))
    .map((item, n) => ({
      id: `c${n}`,
      face: item.face,
      type: random.chance(0.7) ? item.type : random.chance(0.2) ? null : random.pick(IMPERFECTION_TYPES),
      start: random.chance(0.03) ? null : within(item.start + random.normal(0, 2)),
      end: within(item.end + random.normal(0, 2)),
      across: item.across + random.normal(0, 1),
      size: item.size === null || random.chance(0.2) ? null : Math.max(0, item.size + random.normal(0.1, 0.3)),
      sentence: null,
    }));
  const onClutter = truth.clutter
    .filter(() => random.chance(0.4))
    .map((item, n) => ({
      id: `f${n}`,
      face: item.face,
      type: random.pick(IMPERFECTION_TYPES),
      start: item.start,
      end: item.end,
      across: item.across,
      size: null,
      sentence: null,
    }));
  const calls = [...called, ...onClutter];
  const section = isFilletTruth(truth) ? "fillet" : "plate";
  const result = markSection(section, truth, { ...EMPTY_REPORT, calls }, DEFAULT_SETTINGS[section]);
  return observationsOf({
    result,
    truths: seenItems(truth),
    clutter: truth.clutter,
    calls,
    seconds: random.chance(0.5) ? 900 : null,
  });
}

const SECTIONS = Array.from({ length: 40 }, (_, seed) => marked(seed));
const fold = (sections: readonly SectionObservations[]): Tally => sections.reduce(addObservations, EMPTY_TALLY);
const someSections = fc.subarray(SECTIONS, { minLength: 1, maxLength: 8 });

describe("observations", () => {
  test.each(SECTIONS.map((observed, n) => [n, observed] as const))(
    "of piece %d agree with its account",
    (_, observed) => {
      expect(sectionObservationsSchema.parse(observed)).toEqual(observed);
      for (const { found, placed, namedAs, order } of observed.truths) {
        expect(order !== null).toBe(found);
        if (!found) expect([placed, namedAs]).toEqual([0, null]);
      }
    },
  );

  test("there is something of everything among them", () => {
    const { pieces, types } = fold(SECTIONS);
    expect(pieces.falseCalls).toBeGreaterThan(10);
    expect(pieces.clean).toBe(8);
    expect(pieces.cleanCalled).toBeGreaterThan(0);
    expect(Object.values(pieces.clutter).some(({ called }) => called > 0)).toBe(true);
    expect(Object.values(types).reduce((n, { size }) => n + size.n, 0)).toBeGreaterThan(50);
    expect(Object.values(types).reduce((n, { neutralCalled }) => n + neutralCalled, 0)).toBeGreaterThan(5);
  });
});

describe("the learner taken in as sections come to count", () => {
  const placed = SECTIONS.map((observations, n) => ({ id: `s${n % 7}`, at: Math.floor(n / 7), observations }));

  test("in parts is the learner taken in at once, in the order of handing in", () => {
    const whole = takenIn(NEW_IN_ORDER, placed);
    expect(whole?.learner).toEqual(
      placed.reduce((known, { observations, at }) => afterSection(known, observations, at), NEW_LEARNER),
    );
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: placed.length }),
        fc.shuffledSubarray(placed, { minLength: placed.length }),
        (cut, shuffled) => {
          expect(takenIn(NEW_IN_ORDER, shuffled)).toEqual(whole);
          const first = takenIn(NEW_IN_ORDER, placed.slice(0, cut));
          expect(first && takenIn(first, placed.slice(cut))).toEqual(whole);
          // kept in between, as it is in the database
          const kept = learnerInOrderSchema.parse(JSON.parse(JSON.stringify(first)));
          expect(takenIn(kept, placed.slice(cut))).toEqual(whole);
        },
      ),
      { numRuns: 15 },
    );
  });

  test("takes nothing in that was handed in before, or twice", () => {
    const early = takenIn(NEW_IN_ORDER, placed.slice(0, 9));
    expect(early && takenIn(early, [placed[4]])).toBeNull();
    expect(early && takenIn(early, [placed[20], placed[8]])).toBeNull();
    expect(early && takenIn(early, [])).toEqual(early);
  });
});

describe("tallies", () => {
  test("do not depend on the order of sections", () => {
    fc.assert(
      fc.property(
        someSections.chain((sections) =>
          fc.tuple(
            fc.constant(sections),
            fc.shuffledSubarray(sections, { minLength: sections.length, maxLength: sections.length }),
          ),
        ),
        ([one, other]) => {
          expect(fold(other)).toEqual(fold(one));
        },
      ),
      { numRuns: 100 },
    );
  });

  test("of a class are the sum of its learners', however they are divided", () => {
    fc.assert(
      fc.property(someSections, fc.nat(8), (sections, cut) => {
        const [one, other] = [fold(sections.slice(0, cut)), fold(sections.slice(cut))];
        expect(addTallies(one, other)).toEqual(fold(sections));
        expect(addTallies(other, one)).toEqual(fold(sections));
        expect(addTallies(EMPTY_TALLY, one)).toEqual(one);
      }),
      { numRuns: 100 },
    );
  });

  test("extracts of learners come to the extract of all their sections, and are read as they were written", () => {
    const extract = (sections: readonly SectionObservations[]) =>
      overviewOf(addSections(EMPTY_LEARNER_TALLY, sections));
    fc.assert(
      fc.property(someSections, fc.nat(8), fc.nat(8), (sections, a, b) => {
        const [from, to] = [Math.min(a, b), Math.max(a, b)];
        const learners = [sections.slice(0, from), sections.slice(from, to), sections.slice(to)].map(extract);
        const together = sumOverviews(learners);
        expect(together).toEqual(extract(sections));
        expect(overviewSchema.parse(JSON.parse(JSON.stringify(together)))).toEqual(together);
      }),
      { numRuns: 50 },
    );
  });

  test.each([
    ["a name that is none", { scratchy: 1 }],
    ["less than nothing", { "crater-crack": -1 }],
    ["a part of one", { "crater-crack": 0.5 }],
    ["a text", { "crater-crack": "1" }],
    ["a list", [1]],
    ["nothing", null],
  ])("names with %s are no counts", (_, calledAs) => {
    expect(typeTallySchema.safeParse({ ...EMPTY_TYPE_TALLY, calledAs }).success).toBe(false);
    expect(typeTallySchema.safeParse({ ...EMPTY_TYPE_TALLY, calledAs: { "crater-crack": 1 } }).success).toBe(true);
  });

  test("count every imperfection, find and name once", () => {
    fc.assert(
      fc.property(someSections, (sections) => {
        const { types, pieces } = fold(sections);
        const truths = sections.flatMap((section) => section.truths);
        const sum = (of: (tally: NonNullable<Tally["types"][ImperfectionType]>) => number) =>
          Object.values(types).reduce((total, tally) => total + of(tally), 0);
        expect(sum(({ total }) => total)).toBe(truths.filter(({ neutral }) => !neutral).length);
        expect(sum(({ found }) => found)).toBe(truths.filter(({ neutral, found }) => !neutral && found).length);
        for (const tally of Object.values(types)) {
          expect(tally.namedRight + tally.namedAlike + tally.namedWrong + tally.unnamed).toBe(tally.found);
          expect(Object.values(tally.calledAs).reduce((a, b) => a + b, 0)).toBe(tally.found);
          expect(findsBySize(tally.bySize).reduce((n, { total }) => n + total, 0)).toBe(tally.total);
        }
        expect(pieces.falseCalls).toBe(sections.flatMap(({ falseCalls }) => falseCalls).length);
      }),
      { numRuns: 50 },
    );
  });

  test("give figures that are finite and in their bounds", () => {
    fc.assert(
      fc.property(someSections, (sections) => {
        const { types, pieces } = fold(sections);
        for (const { found } of detectionByType(types)) {
          expect(found.interval!.low).toBeLessThanOrEqual(found.share!);
          expect(found.interval!.high).toBeGreaterThanOrEqual(found.share!);
        }
        const matrix = namingMatrix(types);
        const kappa = cohenKappa(squareTable<string>(matrix.rows, matrix.columns, matrix.counts));
        if (kappa) expect(kappa.kappa).toBeLessThanOrEqual(1);
        for (const { share } of confusions(types)) expect(share).toBeLessThanOrEqual(1);
        const { perMetre, interval } = falseCallsOf(pieces, types);
        expect(interval!.low).toBeLessThanOrEqual(perMetre!);
        expect(interval!.high).toBeGreaterThan(perMetre!);
        expect(Number.isFinite(detectionAgainstClutter(types, pieces).sensitivity)).toBe(true);
        for (const { agreement } of sizingByKind(types)) expect(agreement.deviation).toBeGreaterThanOrEqual(0);
        expect(placing(types).start?.n ?? 3).toBeGreaterThanOrEqual(3);
      }),
      { numRuns: 50 },
    );
  });
});

describe("intervals", () => {
  const counted = fc
    .integer({ min: 1, max: 400 })
    .chain((of) => fc.tuple(fc.integer({ min: 0, max: of }), fc.constant(of)));

  test("lie in 0 to 1 about the share, mirror each other", () => {
    fc.assert(
      fc.property(counted, ([count, of]) => {
        for (const make of [wilsonInterval, clopperPearsonInterval]) {
          const { low, high } = make(count, of);
          const mirrored = make(of - count, of);
          expect(low).toBeGreaterThanOrEqual(0);
          expect(high).toBeLessThanOrEqual(1);
          expect(low).toBeLessThanOrEqual(count / of);
          expect(high).toBeGreaterThanOrEqual(count / of);
          expect(mirrored.low).toBeCloseTo(1 - high, 9);
        }
      }),
      { numRuns: 100 },
    );
  });

  test("of a count hold it and grow with it", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 300 }), (count) => {
        const [one, next] = [poissonInterval(count), poissonInterval(count + 1)];
        expect(one.low).toBeLessThanOrEqual(count);
        expect(one.high).toBeGreaterThan(count);
        expect(next.low).toBeGreaterThan(one.low);
        expect(next.high).toBeGreaterThan(one.high);
      }),
      { numRuns: 100 },
    );
  });
});

describe("the detection curve", () => {
  const finds = fc.array(
    fc
      .tuple(
        fc.integer({ min: -20, max: 20 }),
        fc.integer({ min: 1, max: 9 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
      )
      .map(([step, total, share]) => ({ size: Math.exp(step / 10), total, found: Math.round(share * total) })),
    { minLength: 1, maxLength: 20 },
  );

  test("never falls, and its figures stand in order; or it says why there is none and how many more it takes", () => {
    fc.assert(
      fc.property(finds, (rows) => {
        const curve = detectionCurve(rows);
        if (curve.kind === "not-enough") {
          expect(curve.needed).toBeGreaterThan(0);
          return;
        }
        const high = (value: number | null) => value ?? Number.POSITIVE_INFINITY;
        expect(curve.slope).toBeGreaterThan(0);
        expect(curve.a50).toBeLessThanOrEqual(curve.a90);
        expect(curve.a90Interval.low).toBeLessThanOrEqual(curve.a90);
        expect(high(curve.a90Interval.high)).toBeGreaterThanOrEqual(high(curve.a9095));
        expect(high(curve.a9095)).toBeGreaterThanOrEqual(curve.a90 * (1 - 1e-9));
        expect(curve.a50Interval.low).toBeLessThanOrEqual(curve.a50);
      }),
      { numRuns: 200 },
    );
  });

  test("does not depend on the order of rows, and sizes in another unit move with it", () => {
    fc.assert(
      fc.property(finds, (rows) => {
        const [one, other] = [detectionCurve(rows), detectionCurve([...rows].reverse())];
        const inches = detectionCurve(rows.map((row) => ({ ...row, size: row.size / 25.4 })));
        expect(other.kind).toBe(one.kind);
        expect(inches.kind).toBe(one.kind);
        // a curve that hardly rises has its a90 beyond all sizes there are
        if (one.kind !== "curve" || other.kind !== "curve" || inches.kind !== "curve" || one.slope < 0.2) return;
        expect(other.a90 / one.a90).toBeCloseTo(1, 6);
        expect((inches.a90 * 25.4) / one.a90).toBeCloseTo(1, 6);
      }),
      { numRuns: 100 },
    );
  });
});

describe("the learner model", () => {
  test("takes in any section, and stays finite", () => {
    fc.assert(
      fc.property(someSections, (sections) => {
        const learner = sections.reduce((one, observed, n) => afterSection(one, observed, n * 1e8), NEW_LEARNER);
        const found = sections.flatMap(({ truths }) => truths.filter(({ neutral }) => !neutral));
        expect(learner.found.general.n).toBe(found.length);
        expect(learner.named.general.n).toBe(found.filter(({ found }) => found).length);
        expect(Math.abs(learner.found.general.value)).toBeLessThan(20);
        expect(learner.recent.length).toBe(sections.length);
      }),
      { numRuns: 50 },
    );
  });

  test("whatever is chosen as fitting meets the conditions", () => {
    fc.assert(
      fc.property(
        someSections,
        fc.nat(1000),
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        (sections, seed, draw) => {
          const learner = sections.reduce((one, observed, n) => afterSection(one, observed, n * 1e8), NEW_LEARNER);
          const random = randomStream(`candidates ${seed}`);
          const drawn = Array.from({ length: 20 }, (_, n) => drawCandidate(random, `${n}`, typesOf(12)));
          const candidates: Candidate[] = [...drawn, { id: "clean", indications: [] }];
          const { candidate, meanChance, isFitting, reason } = chooseNext(learner, candidates, draw, 1e9);
          expect(candidates).toContain(candidate);
          expect(reason.kind === "clean").toBe(candidate.id === "clean");
          if (!isFitting || meanChance === null) return;
          expect(meanChance).toBeGreaterThanOrEqual(0.75);
          expect(meanChance).toBeLessThanOrEqual(0.88);
          const types = new Set(candidate.indications.map(({ type }) => type));
          expect([...types].filter((type) => !learner.found.types[type]).length).toBeLessThanOrEqual(2);
        },
      ),
      { numRuns: 100 },
    );
  });
});
