import { describe, expect, test } from "vitest";
import { COMPARED_SETS, judgedBy } from "@/app/_marks/compared-sets";
import type { TruthView } from "@/app/_marks/sheet-view";
import type { Outcome } from "@/lib/criteria";
import type { ImperfectionType } from "@/lib/imperfections";

const PLATE = {
  kind: "butt",
  joint: { kind: "butt", process: "111", position: "PA", thickness: 10 },
  dimensions: [{ dimension: "weld-width", station: null, value: 14 }],
} as const;

const truth = (type: ImperfectionType, start: number, end: number, size: number | null): TruthView => ({
  id: `${type} ${start}`,
  face: "cap",
  type,
  start,
  end,
  across: 7,
  size,
  worst: [start, 7],
  outline: [],
  neutral: false,
});

const outcomes = (...truths: TruthView[]) =>
  Object.fromEntries(
    COMPARED_SETS.map(({ short, criteria }): [string, Outcome] => [short, judgedBy(PLATE, truths, criteria).outcome]),
  );

describe("a plate of 10 mm under every standard that is compared", () => {
  test("an undercut 0.7 mm deep passes level D alone of ISO 5817:2014 (row 1.7: 0.5, 0.5 and 1.0 mm)", () => {
    expect(outcomes(truth("continuous-undercut", 100, 120, 0.7))).toMatchObject({
      "ISO 5817 B": "reject",
      "ISO 5817 C": "reject",
      "ISO 5817 D": "accept",
    });
  });

  test("a cap 2.6 mm high goes by its width: 1 mm + 0.1 b, 0.15 b, 0.25 b of 14 mm (ISO 5817:2014, row 1.9)", () => {
    // 2.4, 3.1 and 4.5 mm
    expect(outcomes(truth("excess-weld-metal", 100, 160, 2.6))).toMatchObject({
      "ISO 5817 B": "reject",
      "ISO 5817 C": "accept",
      "ISO 5817 D": "accept",
    });
  });

  test("a crack passes nowhere (ISO 5817:2014, row 1.1; AWS D1.1; ASME B31.3; API 1104)", () => {
    for (const [short, outcome] of Object.entries(outcomes(truth("longitudinal-crack", 40, 52, null)))) {
      expect([short, outcome]).toEqual([short, "reject"]);
    }
  });

  test("nothing on it is accepted everywhere", () => {
    expect(new Set(Object.values(outcomes()))).toEqual(new Set(["accept"]));
  });
});
