import { describe, expect, test } from "vitest";
import {
  agreementOf,
  cohenKappa,
  confusions,
  detectionByType,
  EMPTY_PIECE_TALLY,
  EMPTY_TYPE_TALLY,
  falseCallsOf,
  namingMatrix,
  signalDetection,
  sizingByKind,
  squareTable,
  type TypeTally,
  UNNAMED,
} from "@/lib/progress";

const tally = (more: Partial<TypeTally>): TypeTally => ({ ...EMPTY_TYPE_TALLY, ...more });

describe("agreement", () => {
  // J. M. Bland and D. G. Altman, Lancet i, 1986: peak flow by two meters, first measurements, l/min
  const LARGE = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
  const MINI = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];
  const differences = LARGE.map((value, i) => 1000 * (value - MINI[i]));
  const moments = {
    n: 17,
    sum: differences.reduce((a, b) => a + b, 0),
    sumOfSquares: differences.reduce((a, b) => a + b * b, 0),
  };
  const agreement = agreementOf(moments)!;

  test("bias, deviation and limits as published (the paper rounds 1.96 up to 2)", () => {
    expect(agreement.bias).toBeCloseTo(-2.1, 1);
    expect(agreement.deviation).toBeCloseTo(38.8, 1);
    expect(agreement.bias - 2 * agreement.deviation).toBeCloseTo(-79.7, 0);
    expect(agreement.limits.low).toBeCloseTo(-78.097, 2);
    expect(agreement.limits.high).toBeCloseTo(73.862, 2);
  });

  // from memory of the paper, table of section 3
  test("intervals as published: bias -22.0 to 17.8, lower limit -114.3 to -45.1, upper 40.9 to 110.1, with 2.12 errors", () => {
    const { biasInterval, lowerLimitInterval, upperLimitInterval } = agreement;
    expect(biasInterval.low).toBeCloseTo(-22, 0);
    expect(biasInterval.high).toBeCloseTo(17.8, 1);
    // the paper's limits are those of two deviations, 1.55 farther out
    expect(lowerLimitInterval.low - 1.55).toBeCloseTo(-114.3, 0);
    expect(lowerLimitInterval.high - 1.55).toBeCloseTo(-45.1, 0);
    expect(upperLimitInterval.low + 1.55).toBeCloseTo(40.9, 0);
    expect(upperLimitInterval.high + 1.55).toBeCloseTo(110.1, 0);
    expect(agreement.direction).toBe("neither");
  });

  test("a bias beyond doubt has a direction; three differences at least", () => {
    expect(agreementOf({ n: 4, sum: -2000, sumOfSquares: 1_000_200 })).toMatchObject({
      direction: "under",
      needed: 16,
    });
    expect(agreementOf({ n: 2, sum: 0, sumOfSquares: 8 })).toBeNull();
  });
});

describe("signal detection", () => {
  // log-linear: M. J. Hautus 1995; the figures of 82 and 46 of 100 are a published worked example
  test("82 hits and 46 false alarms of 100 each", () => {
    const { hitRate, falseAlarmRate, sensitivity, criterion } = signalDetection(82, 100, 46, 100);
    expect(hitRate).toBeCloseTo(0.8168317, 7);
    expect(falseAlarmRate).toBeCloseTo(0.460396, 6);
    expect(sensitivity).toBeCloseTo(1.002793, 6);
    expect(criterion).toBeCloseTo(-0.4019603, 6);
  });

  // N. A. Macmillan and C. D. Creelman, Detection Theory: H .70, F .10 gives 1.806; so many trials that half a case is nothing
  test.each([
    [0.7, 0.1, 1.806, 0.3786],
    [0.5, 0.4, 0.2533, 0.1267],
    [0.85, 0.05, 2.6813, 0.3042],
    [0.8, 0.4, 1.095, -0.2941],
  ])("rates of %d and %d", (hit, falseAlarm, sensitivity, criterion) => {
    const result = signalDetection(hit * 1e7, 1e7, falseAlarm * 1e7, 1e7);
    expect(result.sensitivity).toBeCloseTo(sensitivity, 3);
    expect(result.criterion).toBeCloseTo(criterion, 3);
  });

  test("nothing seen yet is no sensitivity and no lean, and finite", () => {
    expect(signalDetection(0, 0, 0, 0)).toMatchObject({ sensitivity: 0, needed: 20 });
    expect(signalDetection(20, 20, 0, 20).sensitivity).toBeGreaterThan(3);
  });
});

describe("kappa", () => {
  // J. Cohen 1960 as worked in textbooks: 0.4; the other two have the same observed agreement and differ in kappa
  test.each([
    [20, 5, 10, 15, 0.4],
    [45, 15, 25, 15, 0.1304],
    [25, 35, 5, 35, 0.2593],
  ])("%d %d / %d %d", (a, b, c, d, kappa) => {
    const table = [
      [a, b],
      [c, d],
    ];
    expect(cohenKappa(table)?.kappa).toBeCloseTo(kappa, 4);
  });

  test("needs something to tell apart", () => {
    expect(cohenKappa([[0]])).toBeNull();
    expect(cohenKappa([[7]])).toBeNull();
    expect(
      cohenKappa([
        [5, 0],
        [0, 5],
      ])?.kappa,
    ).toBe(1);
  });
});

describe("naming", () => {
  const types = {
    "continuous-undercut": tally({
      total: 12,
      found: 10,
      calledAs: { "continuous-undercut": 6, "intermittent-undercut": 3, overlap: 1 },
    }),
    "intermittent-undercut": tally({
      total: 5,
      found: 4,
      calledAs: { "intermittent-undercut": 2, "continuous-undercut": 1, [UNNAMED]: 1 },
    }),
  };
  const matrix = namingMatrix(types);

  test("matrix of finds", () => {
    expect(matrix).toEqual({
      rows: ["continuous-undercut", "intermittent-undercut"],
      columns: ["continuous-undercut", "intermittent-undercut", "overlap", UNNAMED],
      counts: [
        [6, 3, 1, 0],
        [1, 2, 0, 1],
      ],
      total: 14,
      right: 8,
    });
    const square = squareTable<string>(matrix.rows, matrix.columns, matrix.counts);
    // by hand: agreement 8/14, by chance (10 x 7 + 4 x 5) / 196
    expect(cohenKappa(square)?.kappa).toBeCloseTo((8 / 14 - 90 / 196) / (1 - 90 / 196), 12);
  });

  test("pairs taken for each other", () => {
    expect(confusions(types)).toEqual([
      {
        pair: ["continuous-undercut", "intermittent-undercut"],
        there: 3,
        back: 1,
        share: 4 / 14,
        isLookAlike: true,
      },
      { pair: ["continuous-undercut", "overlap"], there: 1, back: 0, share: 1 / 10, isLookAlike: false },
    ]);
  });
});

test("detection by type: twelve misses out of twenty come before one out of one, which comes before none out of nine", () => {
  const rows = detectionByType({
    overlap: tally({ total: 9, found: 9, namedRight: 9 }),
    "surface-pore": tally({ total: 1, found: 0 }),
    spatter: tally({ total: 20, found: 8, namedRight: 4, namedAlike: 1 }),
    sagging: tally({ neutral: 3 }),
  });
  expect(rows.map(({ type }) => type)).toEqual(["spatter", "surface-pore", "overlap"]);
  expect(rows[0]).toMatchObject({
    found: { count: 8, of: 20, share: 0.4, needed: 0 },
    named: { count: 4, of: 8, needed: 12 },
    namedAlike: { count: 5 },
  });
  expect(rows[1].named).toMatchObject({ share: null, interval: null });
});

test("false calls per metre with Garwood's limits, and on what they were made", () => {
  const calls = falseCallsOf(
    {
      ...EMPTY_PIECE_TALLY,
      pieces: 4,
      clean: 2,
      cleanCalled: 1,
      weldLength: 2_500_000,
      falseCalls: 5,
      falseCallsOn: { "chalk-mark": 3, nothing: 2 },
      falseCallsAs: { "longitudinal-crack": 4, [UNNAMED]: 1 },
      clutter: { "pen-mark": { total: 4, called: 0 }, "chalk-mark": { total: 6, called: 3 } },
    },
    { "surface-pore": tally({ neutral: 6, neutralCalled: 2 }) },
  );
  expect(calls).toMatchObject({
    perMetre: 2,
    onNothing: 2,
    as: [
      { name: "longitudinal-crack", count: 4 },
      { name: UNNAMED, count: 1 },
    ],
    cleanPieces: { count: 1, of: 2 },
    neutral: { count: 2, of: 6 },
  });
  expect(calls.on.map(({ kind, called }) => [kind, called.share])).toEqual([
    ["chalk-mark", 0.5],
    ["pen-mark", 0],
  ]);
  expect(calls.interval?.low).toBeCloseTo(1.623 / 2.5, 3);
  expect(calls.interval?.high).toBeCloseTo(11.668 / 2.5, 3);
});

test("depths of all types are one hand's depths", () => {
  const [sizing] = sizingByKind({
    "continuous-undercut": tally({ size: { n: 2, sum: 500, sumOfSquares: 130_000 } }),
    "shrinkage-groove": tally({ size: { n: 2, sum: 300, sumOfSquares: 50_000 } }),
  });
  expect(sizing).toMatchObject({ size: "depth", agreement: { n: 4, bias: 0.2 } });
});
