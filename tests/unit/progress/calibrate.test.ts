import { describe, expect, test } from "vitest";
import type { ImperfectionType } from "@/lib/imperfections";
import { logistic } from "@/lib/math";
import { type CalibrationRow, calibrate, calibrationStep } from "@/lib/progress";
import { randomStream } from "@/lib/random";
import { typesOf } from "../../support/simulated-learner";

const SIZES = [0.3, 0.6, 1];

/** Finds under true shifts, so many of each type and size on average. */
function finds(seed: string, perCell: number, shiftOf: (type: ImperfectionType, size: number) => number) {
  const random = randomStream(seed);
  return typesOf(12).flatMap((type) =>
    SIZES.flatMap((size) =>
      Array.from({ length: 1 + random.integer(2 * perCell) }, (): CalibrationRow => {
        const ahead = random.normal(1, 1);
        return { type, size, ahead, found: random.chance(logistic(ahead - shiftOf(type, size))) };
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
    const missed = (count: number): CalibrationRow[] =>
      Array.from({ length: count }, () => ({ type: "overlap", size: 1, ahead: 1, found: false }));
    const [few] = calibrate(missed(3));
    const [many] = calibrate(missed(40));
    expect(few).toMatchObject({ type: "overlap", step: 0, observations: 3 });
    expect(few.shift).toBeGreaterThan(0);
    expect(few.shift).toBeLessThan(0.7);
    expect(many.shift).toBeGreaterThan(1.2);
    expect(many.error).toBeLessThan(few.error);
    expect(calibrate([])).toEqual([]);
  });
});
