import { describe, expect, test } from "vitest";
import type { ImperfectionType } from "@/lib/imperfections";
import { logistic } from "@/lib/math";
import {
  afterSection,
  type CalibrationRow,
  calibrate,
  calibrationRows,
  calibrationStep,
  chanceOf,
  type Learner,
  NEW_LEARNER,
  shiftFor,
} from "@/lib/progress";
import { randomStream } from "@/lib/random";
import { observedOf, truthOf } from "../../support/observed";
import { typesOf } from "../../support/simulated-learner";

const SIZES = [0.3, 0.6, 1];

/** Finds under true shifts, so many of each type and size on average. */
function finds(seed: string, perCell: number, shiftOf: (type: ImperfectionType, size: number) => number) {
  const random = randomStream(seed);
  return typesOf(12).flatMap((type) =>
    SIZES.flatMap((size) =>
      Array.from({ length: 1 + random.integer(2 * perCell) }, (): CalibrationRow => {
        const ahead = random.normal(1, 1);
        const found = random.chance(logistic(ahead - shiftOf(type, size)));
        const learner = `${random.integer(20)}`;
        return { learner, type, size, ahead, found, placed: Number(found) };
      }),
    ),
  );
}

const errorOf = (
  corrections: ReturnType<typeof calibrate>,
  shiftOf: (type: ImperfectionType, step: number) => number,
) =>
  Math.sqrt(
    corrections.reduce((sum, { type, step, shift }) => sum + (shift - shiftOf(type, step)) ** 2, 0) /
      corrections.length,
  );

describe("difficulties from what was found", () => {
  const random = randomStream("shifts");
  const shifts = new Map(
    typesOf(12).flatMap((type) =>
      SIZES.map((size) => [`${type} ${calibrationStep(size)}`, random.normal(0, 0.8)] as const),
    ),
  );
  const truth = (type: ImperfectionType, step: number) => shifts.get(`${type} ${step}`)!;

  test("come nearer to the truth than the model does, the nearer the more there is", () => {
    const model = errorOf(
      calibrate(finds("any", 1, () => 0)).map((one) => ({ ...one, shift: 0 })),
      truth,
    );
    const errors = [8, 40, 200].map((perCell) => {
      const rounds = Array.from({ length: 8 }, (_, n) =>
        errorOf(calibrate(finds(`some ${n}`, perCell, (type, size) => truth(type, calibrationStep(size)))), truth),
      );
      return rounds.reduce((sum, error) => sum + error, 0) / rounds.length;
    });
    expect(errors[0]).toBeLessThan(0.85 * model);
    expect(errors[1]).toBeLessThan(errors[0]);
    expect(errors[2]).toBeLessThan(errors[1]);
    expect(errors[2]).toBeLessThan(0.3);
  });

  test("stay with the model where the model is right", () => {
    const corrections = calibrate(finds("right", 10, () => 0));
    expect(errorOf(corrections, () => 0)).toBeLessThan(0.25);
  });

  test("their errors are as large as they say", () => {
    const corrections = calibrate(finds("errors", 25, (type, size) => truth(type, calibrationStep(size))));
    const inside = corrections.filter(
      ({ type, step, shift, error }) => Math.abs(shift - truth(type, step)) < 2 * error,
    );
    expect(inside.length / corrections.length).toBeGreaterThan(0.85);
  });

  test("three misses move little, forty move much, and missing means harder", () => {
    // beside much else, some of it harder and some of it easier
    const else_: CalibrationRow[] = Array.from({ length: 400 }, (_, n) => {
      const type = typesOf(12)[n % 12];
      return { learner: `${n % 4}`, type, size: 1, ahead: 0, found: true, placed: 0.3 + (0.4 * (n % 12)) / 11 };
    });
    const missed = (count: number): CalibrationRow[] =>
      Array.from({ length: count }, (_, n) => {
        return { learner: `${n % 4}`, type: "overlap", size: 1, ahead: 1, found: false, placed: 0 };
      });
    const overlap = (count: number) =>
      calibrate([...else_, ...missed(count)]).find(({ type }) => type === "overlap") ?? expect.fail("no overlap");
    const [few, many] = [overlap(3), overlap(40)];
    expect(few).toMatchObject({ type: "overlap", step: 0, observations: 3 });
    expect(few.shift).toBeGreaterThan(0);
    expect(few.shift).toBeLessThan(0.7);
    expect(many.shift).toBeGreaterThan(1.2);
    expect(few.shift).toBeLessThan(1.96 * few.error);
    expect(many.shift).toBeGreaterThan(1.96 * many.error);
    expect(calibrate([])).toEqual([]);
  });

  test("count how far something was placed, as the skills do that they are held against", () => {
    const one: CalibrationRow = { learner: "a", type: "overlap", size: 1, ahead: 0, found: true, placed: 1 };
    const half: CalibrationRow = { ...one, type: "spatter", placed: 0.5 };
    const [overlap, spatter] = calibrate([one, half, one, half]);
    expect([overlap.found, spatter.found]).toEqual([2, 2]);
    expect(spatter.shift).toBeGreaterThan(overlap.shift);
  });
});

describe("difficulties beside each other", () => {
  const TYPES = typesOf(12);
  const EASY = TYPES.slice(0, 3);
  /** Rows of a class whose learners are taken in as they practise; they get better, and may be better at all that they practise. */
  const rowsOf = (
    name: string,
    of: { learners: number; types: readonly ImperfectionType[]; general: number; ahead: number; better: number },
    harder: (type: ImperfectionType) => number,
  ): CalibrationRow[] =>
    Array.from({ length: of.learners }, (_, person) => {
      const random = randomStream(`${name} ${person}`);
      const general = random.normal(of.general, 0.7);
      let learner = NEW_LEARNER;
      return Array.from({ length: 30 }, (_, piece) => {
        const truths = Array.from({ length: 6 }, (_, n) => {
          const type = random.pick(of.types);
          const difficulty = random.normal(-of.ahead, 0.7);
          const found = random.chance(logistic(general + of.better * piece - difficulty - harder(type)));
          return truthOf({ truthId: `${n}`, type, difficulty, found, placed: Number(found) });
        });
        const observed = observedOf(truths);
        const rows = piece < 3 ? [] : calibrationRows(`${name} ${person}`, learner, observed);
        learner = afterSection(learner, observed, piece);
        return rows;
      });
    }).flat(2);
  const everything = { learners: 10, types: TYPES, general: 0.8, ahead: 0, better: 0 };
  const easyOnly = { learners: 40, types: EASY, general: 1.5, ahead: 1, better: 0.03 };
  const meanOf = (corrections: ReturnType<typeof calibrate>, types: readonly ImperfectionType[]) => {
    const own = corrections.filter(({ type }) => types.includes(type));
    return own.reduce((sum, { shift }) => sum + shift, 0) / own.length;
  };

  test("a class that only practised what is easy, and gets better, makes nothing easier and nothing else harder", () => {
    const right = () => 0;
    const corrections = calibrate([...rowsOf("all", everything, right), ...rowsOf("easy", easyOnly, right)]);
    expect(Math.abs(meanOf(corrections, EASY))).toBeLessThan(0.1);
    expect(Math.abs(meanOf(corrections, TYPES.slice(3)))).toBeLessThan(0.05);
    expect(corrections.filter(({ shift, error }) => Math.abs(shift) > 1.96 * error).length).toBeLessThan(2);
    // and by itself it says nothing but how these three are beside each other
    const alone = calibrate(rowsOf("easy", easyOnly, right));
    expect(meanOf(alone, EASY)).toBeCloseTo(0, 6);
    expect(alone.every(({ shift, error }) => Math.abs(shift) < 2 * error)).toBe(true);
  });

  test("what is harder beside the rest still comes out, for either class", () => {
    const harder = (type: ImperfectionType) => (type === EASY[0] ? 1 : 0);
    const corrections = calibrate([...rowsOf("all", everything, harder), ...rowsOf("easy", easyOnly, harder)]);
    const shiftOfType = (type: ImperfectionType) => corrections.find((one) => one.type === type)?.shift ?? Number.NaN;
    // one of twelve is harder by 1, which is 11/12 beside the mean and -1/12 for the others
    // less what is drawn to 0, and what is lost since skills are known with an error
    expect(shiftOfType(EASY[0])).toBeGreaterThan(0.6);
    expect(shiftOfType(EASY[0])).toBeLessThan(1.05);
    for (const type of EASY.slice(1)) expect(Math.abs(shiftOfType(type) + 1 / 12)).toBeLessThan(0.15);
    expect(corrections.reduce((sum, { shift }) => sum + shift, 0)).toBeCloseTo(0, 6);
  });
});

describe("what everybody finds harder than the model says", () => {
  const TYPES = typesOf(6);
  const HARDER = 1;
  const harder = (type: ImperfectionType) => (type === TYPES[0] ? HARDER : 0);
  const rows: CalibrationRow[] = [];
  /** Their later pieces, with the learner just before each and the true chance. */
  const later: { learner: Learner; type: ImperfectionType; difficulty: number; chance: number }[] = [];
  for (let person = 0; person < 25; person++) {
    const random = randomStream(`season ${person}`);
    const general = random.normal(0.8, 0.7);
    let learner = NEW_LEARNER;
    for (let piece = 0; piece < 30; piece++) {
      const truths = Array.from({ length: 6 }, (_, n) => {
        const type = random.pick(TYPES);
        const difficulty = random.normal(0, 0.7);
        const chance = logistic(general - difficulty - harder(type));
        const found = random.chance(chance);
        if (piece >= 3) later.push({ learner, type, difficulty, chance });
        return truthOf({ truthId: `${n}`, type, difficulty, found, placed: Number(found) });
      });
      const observed = observedOf(truths);
      if (piece >= 3) rows.push(...calibrationRows(`${person}`, learner, observed));
      learner = afterSection(learner, observed, piece);
    }
  }
  const corrections = calibrate(rows);
  /** Mean square of what the predicted chance is off, for what passes. */
  const off = (isCorrected: boolean, passes: (type: ImperfectionType) => boolean = () => true) => {
    const of = later.filter(({ type }) => passes(type));
    const sum = of.reduce((all, { learner, type, difficulty, chance }) => {
      const shift = isCorrected ? shiftFor(corrections, learner, type, 1) : 0;
      return all + (chanceOf(learner.found, type, difficulty + shift) - chance) ** 2;
    }, 0);
    return sum / of.length;
  };

  test("is not counted twice, in the corrections and in each learner's standing", () => {
    expect(corrections.find(({ type }) => type === TYPES[0])?.shift).toBeGreaterThan(0.5);
    expect(off(true)).toBeLessThanOrEqual(off(false));
    expect(off(true, (type) => type === TYPES[0])).toBeLessThanOrEqual(off(false, (type) => type === TYPES[0]));
  });
});
