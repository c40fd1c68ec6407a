import { describe, expect, test } from "vitest";
import {
  assess,
  assessPiece,
  BUILT_IN_CRITERIA,
  type Criteria,
  type Criterion,
  iso5817,
  mergeCriteria,
  readCriteria,
  readCriteriaText,
  writeCriteria,
} from "@/lib/criteria";
import { pieceOf, seen } from "./pieces";

const UNDERCUT_ROW: Criterion = {
  id: "undercut",
  clause: "4.2 a",
  name: "Undercut",
  types: ["continuous-undercut", "intermittent-undercut"],
  faces: ["cap"],
  ranges: [{ symbol: "t", over: 3, upTo: 20 }],
  limit: { kind: "at-most", quantity: "depth", formula: { coefficient: 0.05, symbol: "t", atMost: 0.4 } },
  sums: [{ sum: "length", window: 200, most: { kind: "fixed", value: 30, shorterWeld: { under: 200, share: 0.1 } } }],
  evidence: "own",
  notes: "",
};
const OWN: Criteria = {
  version: 1,
  id: "bridge-deck",
  name: "Deck plates",
  edition: "Workshop sheet of 2026",
  notes: "",
  rows: [UNDERCUT_ROW],
  sections: [],
};

/** What stands in for a value at a path. */
const changed = (change: Record<string, unknown>, rowChange: Record<string, unknown> = {}) => ({
  ...OWN,
  rows: [{ ...UNDERCUT_ROW, ...rowChange }],
  ...change,
});

describe("reading what a tutor made", () => {
  test("comes back from JSON as it was", () => {
    expect(readCriteriaText(writeCriteria(OWN))).toEqual({ ok: true, criteria: OWN });
    const merged = mergeCriteria(iso5817({ level: "C", edition: 2014 }), OWN);
    expect(readCriteriaText(writeCriteria(merged))).toEqual({ ok: true, criteria: merged });
  });

  test.each<[string, unknown, string, RegExp]>([
    ["no name", changed({ name: " " }), "name", /name: a text of 1 to 120 characters/],
    ["no edition", { ...OWN, edition: undefined }, "edition", /edition: a text of 1 to 200 characters/],
    ["no rows", changed({ rows: [] }), "rows", /at least one/],
    ["a type that is none", changed({}, { types: ["rust"] }), "rows 1, types 1", /types of the catalogue/],
    ["no type", changed({}, { types: [] }), "rows 1, types", /at least one type/],
    ["no face", changed({}, { faces: [] }), "rows 1, faces", /at least one of cap, root, fillet/],
    [
      "a kind that is none",
      changed({}, { limit: { kind: "small" } }),
      "rows 1, limit, kind",
      /one of not-permitted, permitted/,
    ],
    [
      "a coefficient without its symbol",
      changed({}, { limit: { kind: "at-most", quantity: "depth", formula: { coefficient: 0.1 } } }),
      "rows 1, limit, formula, symbol",
      /go together, like 0.1 and t/,
    ],
    [
      "a formula of nothing",
      changed({}, { limit: { kind: "at-most", quantity: "depth", formula: { atMost: 1 } } }),
      "rows 1, limit, formula, constant",
      /a constant in mm, or a coefficient and a symbol/,
    ],
    [
      "a negative number",
      changed({}, { limit: { kind: "at-most", quantity: "depth", formula: { constant: -1 } } }),
      "rows 1, limit, formula, constant",
      /0 or more/,
    ],
    [
      "an angle that is limited from above",
      changed({}, { limit: { kind: "at-most", quantity: "toe-angle", formula: { constant: 1 } } }),
      "rows 1, limit, quantity",
      /one of depth, height/,
    ],
    [
      "a symbol that is none",
      changed({}, { limit: { kind: "at-most", quantity: "depth", formula: { coefficient: 1, symbol: "x" } } }),
      "rows 1, limit, formula, symbol",
      /one of t, s, a/,
    ],
    [
      "a range upside down",
      changed({}, { ranges: [{ symbol: "t", from: 8, upTo: 3 }] }),
      "rows 1, ranges 1, upTo",
      /more than the lower edge, 8 mm/,
    ],
    ["a range of nothing", changed({}, { ranges: [{ symbol: "t" }] }), "rows 1, ranges 1, from", /at least one of/],
    [
      "a range with two lower edges",
      changed({}, { ranges: [{ symbol: "t", from: 3, over: 3 }] }),
      "rows 1, ranges 1, over",
      /not both/,
    ],
    [
      "a window of nothing",
      changed({}, { sums: [{ sum: "length", window: 0, most: { kind: "share", share: 0.1 } }] }),
      "rows 1, sums 1, window",
      /above 0/,
    ],
    [
      "more than the whole weld",
      changed({}, { sums: [{ sum: "length", most: { kind: "share", share: 10 } }] }),
      "rows 1, sums 1, most, share",
      /at most 1/,
    ],
    ["two rows of one id", changed({ rows: [UNDERCUT_ROW, UNDERCUT_ROW] }), "rows 2, id", /undercut is taken/],
    ["a field that is not known", { ...OWN, colour: "red" }, "", /colour/],
  ])("%s: the field is named, and what would be right", (_, written, field, problem) => {
    const read = readCriteria(written);
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.problems).toContainEqual({ field, problem: expect.stringMatching(problem) });
  });

  test("what is no JSON, or no criteria", () => {
    expect(readCriteriaText("{")).toEqual({
      ok: false,
      problems: [{ field: "", problem: "JSON text, as criteria are saved" }],
    });
    expect(readCriteria(null).ok).toBe(false);
  });

  test("two things that are wrong are both named", () => {
    const read = readCriteria(changed({ name: "" }, { faces: ["side"] }));
    expect(read.ok ? [] : read.problems.map(({ field }) => field)).toEqual(["name", "rows 1, faces 1"]);
  });
});

/** Every place in a value: keys from the outside in. */
function placesIn(value: unknown, path: (string | number)[] = []): (string | number)[][] {
  if (typeof value !== "object" || value === null) return [path];
  const keys = Array.isArray(value) ? value.map((_, n) => n) : Object.keys(value);
  return [path, ...keys.flatMap((key) => placesIn((value as Record<string | number, unknown>)[key], [...path, key]))];
}

function replaced(value: unknown, [key, ...rest]: (string | number)[], by: unknown): unknown {
  if (key === undefined) return by;
  const inside = (value as Record<string | number, unknown>)[key];
  const changedInside = rest.length === 0 ? by : replaced(inside, rest, by);
  if (Array.isArray(value)) return value.map((one, n) => (n === key ? changedInside : one));
  return { ...(value as object), [key]: changedInside };
}

describe("whatever is wrong", () => {
  const FULL: Criteria = {
    ...OWN,
    rows: [
      { ...UNDERCUT_ROW, alsoNeeds: "a look from behind" },
      {
        ...UNDERCUT_ROW,
        id: "spatter",
        types: ["spatter"],
        limit: { kind: "depends", on: "application", text: "by coating" },
        sums: [],
      },
      {
        ...UNDERCUT_ROW,
        id: "toe",
        types: ["incorrect-weld-toe"],
        limit: { kind: "at-least", quantity: "toe-angle", value: 110 },
        sums: [],
      },
      {
        ...UNDERCUT_ROW,
        id: "sound",
        types: ["root-fusion"],
        limit: { kind: "not-by-eye", needs: "ultrasound" },
        sums: [],
      },
      {
        ...UNDERCUT_ROW,
        id: "pore",
        types: ["surface-pore"],
        limit: { kind: "permitted" },
        sums: [
          {
            sum: "diameter",
            counted: { edge: "from", quantity: "diameter", formula: { constant: 1 } },
            most: { kind: "share", share: 0.1 },
          },
        ],
      },
    ],
    sections: iso5817({ level: "C", edition: 2014, several: true }).sections,
  };

  test("the full set is right as it is", () => {
    expect(readCriteria(FULL)).toEqual({ ok: true, criteria: FULL });
  });

  test.each(placesIn(FULL).map((path) => [path.join(" "), path] as const))(
    "at %s a message of our own names what is right",
    (_, path) => {
      for (const wrong of [null, undefined, "?", -1, 1e9, Number.NaN, [], {}, [{}], { odd: 1 }, true]) {
        const read = readCriteria(replaced(FULL, [...path], wrong));
        for (const { field, problem } of read.ok ? [] : read.problems) {
          expect(problem, `${field} with ${JSON.stringify(wrong)}`).not.toMatch(
            /invalid|expected|received|unrecognized|too (big|small)/i,
          );
          expect(problem.length).toBeGreaterThan(5);
        }
      }
    },
  );
});

describe("sentences by criteria of one's own", () => {
  test("depth 0.05 t at most 0.4 mm, summed length 30 mm in 200 mm, 10 % of a shorter weld", () => {
    const sentence = (end: number, depth: number, length = 300, t = 10) =>
      assess(seen("continuous-undercut", 0, end, { depth }), pieceOf({ t }, length), OWN).outcome;
    expect([sentence(30, 0.4), sentence(30, 0.41), sentence(30.1, 0.1)]).toEqual(["accept", "reject", "reject"]);
    expect([sentence(15, 0.3, 150, 6), sentence(15.1, 0.3, 150, 6)]).toEqual(["accept", "reject"]);
    expect(sentence(10, 0.1, 300, 3)).toBe("not-covered");
  });
});

describe("one set on top of another", () => {
  const lower = iso5817({ level: "D", edition: 2014 });
  const merged = mergeCriteria(lower, OWN);
  const undercut = (face: "cap" | "fillet", depth: number) => seen("continuous-undercut", 0, 20, { depth }, face);

  test("what the upper set speaks of goes by it, the same type on another face by the lower one", () => {
    // own: 0.4 mm; ISO 5817:2014 row 1.7 level D: 0.2 t, at most 1 mm
    expect(assess(undercut("cap", 0.9), pieceOf(), merged).outcome).toBe("reject");
    expect(assess(undercut("fillet", 0.9), pieceOf(), merged).outcome).toBe("accept");
    expect(assess(seen("excess-weld-metal", 0, 20, { height: 5 }), pieceOf({ b: 16 }), merged).outcome).toBe("accept");
  });

  test("outside its range the upper set still speaks: nothing falls back", () => {
    expect(assess(undercut("cap", 0.1), pieceOf({ t: 25 }), merged).outcome).toBe("not-covered");
  });

  test("a row that is split by face is summed up as one", () => {
    const onCap: Criteria = { ...OWN, rows: [{ ...UNDERCUT_ROW, types: ["intermittent-undercut"] }] };
    const split = mergeCriteria(iso5817({ level: "D", edition: 2014 }), onCap);
    const rows = split.rows.filter(({ id }) => id === "1.7-thin");
    expect(rows.map(({ types, faces }) => [types, faces])).toEqual([
      [["continuous-undercut"], ["cap"]],
      [["continuous-undercut", "intermittent-undercut"], ["fillet"]],
    ]);
    // 2 mm, level D: short, 25 mm in 100 mm
    const both = [
      seen("continuous-undercut", 0, 20, { depth: 0.1 }, "cap"),
      seen("continuous-undercut", 20, 40, { depth: 0.1 }, "fillet"),
    ];
    expect(assessPiece(both, pieceOf({ t: 2 }), split).outcome).toBe("reject");
  });

  test("rows of both that have one id stay apart, also when read back", () => {
    const [aws] = BUILT_IN_CRITERIA.filter(({ id }) => id === "aws-d1.1-cyclic-other");
    const both = mergeCriteria(aws, OWN);
    // the lower row has a groove beside the root left on the cap, and is split
    expect(both.rows.filter(({ id }) => id.startsWith("undercut")).map(({ id, faces }) => [id, faces])).toEqual([
      ["undercut-2", ["cap"]],
      ["undercut", ["cap"]],
      ["undercut", ["root", "fillet"]],
    ]);
    expect(readCriteriaText(writeCriteria(both))).toEqual({ ok: true, criteria: both });
  });
});
