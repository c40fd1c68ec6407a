import { describe, expect, test } from "vitest";
import {
  assess,
  atLevel,
  iso5817,
  iso5817Rows,
  type LevelRow,
  type Limit,
  type Piece,
  type QualityLevel,
  severalInOneSection,
  withinRanges,
  workOut,
} from "@/lib/criteria";
import { WORKED_LIMITS } from "./iso5817-worked-limits";
import { at, pieceOf, seen } from "./pieces";

const LEVELS = ["D", "C", "B"] as const satisfies readonly QualityLevel[];

/** The row of a thickness by its clause and ISO 6520-1 number; "butt", "fillet" and "micro" tell rows of one number apart. */
function rowOf(clause: string, number: string, piece: Piece): LevelRow {
  const [numbers, variant] = number.split(" ");
  const found = iso5817Rows(2014).filter(
    (row) =>
      row.clause === clause &&
      (numbers === "-" ? row.numbers.length === 0 : row.numbers.join("/") === numbers) &&
      withinRanges([row.range], piece.values) === true &&
      // rows that our own reading adds to the table
      !/group|root$/.test(row.id) &&
      (variant ? row.id.includes(variant) : !row.id.includes("micro")),
  );
  expect(found.map(({ id }) => id)).toHaveLength(1);
  return found[0];
}

function written(limit: Limit, piece: Piece): string {
  const kinds = { "not-permitted": "none", permitted: "permitted" } as const;
  if (limit.kind === "at-most") {
    const worked = workOut(limit.formula, piece.values);
    if (!("value" in worked)) throw new Error(`${worked.missing} is missing`);
    return `${Number(worked.value.toFixed(6))}${limit.shortOnly ? " short" : ""}`;
  }
  if (limit.kind === "at-least") return `from ${limit.value} deg`;
  if (limit.kind === "depends") return limit.on;
  if (limit.kind === "area-at-most") return `${limit.percent} %`;
  return kinds[limit.kind as keyof typeof kinds];
}

/** Row 4.1: butt welds by t or fillets by a. */
function writtenSum(level: QualityLevel, piece: Piece): string {
  const sums = severalInOneSection(level, 2014)
    .filter(({ ranges }) => withinRanges(ranges, piece.values) === true)
    .map(({ most }) => (most.kind === "at-most" ? workOut(most.formula, piece.values) : most.kind));
  const values = sums.map((sum) => (typeof sum !== "string" && "value" in sum ? Number(sum.value.toFixed(6)) : sum));
  return values[0] === "not-permitted" ? "none" : `sum ${values.join(" or ")}`;
}

describe.each(WORKED_LIMITS)(
  "ISO 5817:2014 with t $values.t, s $values.s, a $values.a, b $values.b",
  ({ values, rows }) => {
    const piece: Piece = { length: 300, values };

    test.each(rows)("row %s, %s", (clause, number, ...limits) => {
      const ours = LEVELS.map((level) =>
        clause === "4.1"
          ? writtenSum(level, piece)
          : written(atLevel(rowOf(clause, number, piece), level).limit, piece),
      );
      expect(ours).toEqual(limits);
    });

    // the same numbers by way of sentences: the limit itself is accepted, a hundredth of a millimetre more is not
    test.each(rows.filter(([clause]) => clause !== "4.1"))("sentences by row %s, %s", (clause, number, ...limits) => {
      const row = rowOf(clause, number, piece);
      for (const type of row.types)
        for (const face of row.faces)
          LEVELS.forEach((level, n) => {
            const limit = row.levels[level];
            const numeric = Number.parseFloat(limits[n].replace("from ", ""));
            const sentence = (size: number) => {
              const measured = limit.kind === "at-most" || limit.kind === "at-least" ? { [limit.quantity]: size } : {};
              return assess(seen(type, 40, 50, measured, face), piece, iso5817({ level, edition: 2014 })).outcome;
            };
            const means = `${type} ${level}`;
            if (limits[n] === "none") expect(sentence(0.1), means).toBe("reject");
            else if (limits[n] === "permitted") expect(sentence(0.1), means).toBe("accept");
            else if (Number.isNaN(numeric)) expect(sentence(0.1), means).toBe("cannot-be-judged");
            else if (limit.kind === "at-least")
              expect([sentence(numeric), sentence(numeric - 0.1)], means).toEqual(["accept", "reject"]);
            else expect([sentence(numeric), sentence(numeric + 0.01)], means).toEqual(["accept", "reject"]);
          });
    });
  },
);

test("there are 160 worked limits", () => {
  expect(WORKED_LIMITS.flatMap(({ rows }) => rows)).toHaveLength(160);
});

describe("ISO 5817, borders of thickness: 3 mm belongs to the thin group", () => {
  const concavity = (level: QualityLevel, t: number, depth: number) =>
    assess(seen("root-concavity", 0, 10, { depth }), pieceOf({ t }), iso5817({ level, edition: 2014 }));

  // ISO 5817:2014 row 1.17: t = 3.0 C short 0.1 t, B none; t = 3.01 C short 0.1 t at most 1, B short 0.05 t at most 0.5
  test.each([
    ["C", 3, 0.3, "accept"],
    ["C", 3, 0.301, "reject"],
    ["C", 3.01, 0.301, "accept"],
    ["C", 3.01, 0.302, "reject"],
    ["B", 3, 0.05, "reject"],
    ["B", 3.01, 0.1505, "accept"],
    ["B", 3.01, 0.151, "reject"],
    // row 1.17 D: 0.2 mm + 0.1 t up to 3 mm, above it 0.2 t: 0.5 and 0.602
    ["D", 3, 0.5, "accept"],
    ["D", 3, 0.51, "reject"],
    ["D", 3.01, 0.602, "accept"],
  ] as const)("level %s, t %d, depth %d: %s", (level, t, depth, outcome) => {
    expect(concavity(level, t, depth).outcome).toBe(outcome);
  });

  test("below 0.5 mm the standard does not speak", () => {
    const { outcome, text } = concavity("C", 0.4, 0.01);
    expect(outcome).toBe("not-covered");
    expect(text).toContain("only for t from 0.5 up to 3 mm or t over 3 mm");
  });
});

describe("ISO 5817, caps", () => {
  const excess = (level: QualityLevel, b: number, height: number) =>
    assess(seen("excess-weld-metal", 0, 10, { height }), pieceOf({ b }), iso5817({ level, edition: 2014 })).outcome;

  // row 1.9: 1 mm + 0.25, 0.15, 0.1 b, at most 10, 7, 5 mm: the caps are reached at b = 36, 40, 40
  test.each([
    ["D", 36, 10],
    ["C", 40, 7],
    ["B", 40, 5],
  ] as const)("row 1.9 level %s reaches its cap at b = %d", (level, b, cap) => {
    for (const width of [b, b + 1, 2 * b]) {
      expect(excess(level, width, cap)).toBe("accept");
      expect(excess(level, width, cap + 0.01)).toBe("reject");
    }
    expect(excess(level, b - 1, cap)).toBe("reject");
  });

  test("a height over the cap is rejected even where b is not known, a smaller one cannot be judged", () => {
    const piece: Piece = { length: 300, values: { t: 10 } };
    const sentence = (height: number) =>
      assess(seen("excess-weld-metal", 0, 10, { height }), piece, iso5817({ level: "B", edition: 2014 }));
    expect(sentence(5.1).outcome).toBe("reject");
    expect(sentence(4)).toMatchObject({ outcome: "cannot-be-judged", findings: [{ reason: "missing-measure" }] });
  });
});

test("the sentence has the limit with its numbers put in", () => {
  // ISO 5817:2014 row 1.7, level C
  const { text, findings } = assess(
    seen("continuous-undercut", 20, 40, { depth: 0.7 }),
    pieceOf({ t: 10 }),
    iso5817({ level: "C", edition: 2014 }),
  );
  expect(text).toBe(
    "1.7 Undercut: h ≤ 0.1 t, at most 0.5 mm: 0.1 × 10 = 1.0, capped at 0.5 mm; measured 0.7 mm: reject",
  );
  expect(findings[0]).toMatchObject({ limit: 0.5, found: 0.7, row: "1.7-thick", evidence: "secondary" });
});

describe("ISO 5817:2023", () => {
  const excessAt = (penetration: "as-2014" | "lowered", height: number) =>
    assess(
      seen("excess-penetration", 0, 10, { height }),
      pieceOf({ bRoot: 4 }),
      iso5817({ level: "C", edition: 2023, penetration }),
    ).outcome;

  test("row 1.11 level C is a switch: 1 + 0.6 x 4 = 3.4 as in 2014, 1 + 0.45 x 4 = 2.8 as one source has it", () => {
    expect([excessAt("as-2014", 3.4), excessAt("as-2014", 3.41)]).toEqual(["accept", "reject"]);
    expect([excessAt("lowered", 2.8), excessAt("lowered", 2.81)]).toEqual(["accept", "reject"]);
  });

  // the actual throat instead of the nominal one: rows 1.3, 1.4 (fillets), 1.16, 3.2
  test.each([
    ["surface-pore", { diameter: 0.9 }],
    ["crater-pipe", { depth: 0.45 }],
    ["excessive-asymmetry", { difference: 2.7 }],
    ["incorrect-root-gap", { gap: 1.5 }],
  ] as const)("%s on a fillet goes by the actual throat", (type, measured) => {
    // a 6 allows it; aA 4 does not: 0.2 x 4 = 0.8; 0.1 x 4 = 0.4; 2 + 0.15 x 4 = 2.6; 0.5 + 0.2 x 4 = 1.3
    const piece = pieceOf({ t: 10, a: 6, aA: 4 });
    const indication = seen(type, 50, 50, measured, "fillet");
    expect(assess(indication, piece, iso5817({ level: "C", edition: 2014 })).outcome).toBe("accept");
    expect(assess(indication, piece, iso5817({ level: "C", edition: 2023 })).outcome).toBe("reject");
    const { aA, ...unmeasured } = piece.values;
    const blind = assess(indication, { ...piece, values: unmeasured }, iso5817({ level: "C", edition: 2023 }));
    expect(aA).toBe(4);
    expect(blind.findings[0]).toMatchObject({ outcome: "cannot-be-judged", reason: "missing-measure" });
  });

  test("a crater pipe on a cap still goes by t", () => {
    const piece: Piece = { length: 300, values: { t: 8 } };
    const sentence = (depth: number) =>
      assess(at("crater-pipe", 50, { depth }), piece, iso5817({ level: "C", edition: 2023 }));
    // row 1.4 with t = 8: C 0.8
    expect([sentence(0.8).outcome, sentence(0.81).outcome]).toEqual(["accept", "reject"]);
  });
});
