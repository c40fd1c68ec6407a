import { describe, expect, test } from "vitest";
import {
  askedOf,
  assess,
  COMPARED_WELD,
  type Criteria,
  compare,
  comparedCriteria,
  comparedTypes,
  STRESSES,
  type Subject,
} from "@/lib/criteria";
import { SURFACE_FACES } from "@/lib/weld";

const SETS = comparedCriteria("across-tension");
const everything = (t: number) => ({ t, s: t, a: 5, aA: 5, b: 14, bRoot: 4, z: 7, hCap: 2 });

const undercut = (t: number, depth: number, length: number): Subject => ({
  type: "continuous-undercut",
  face: "cap",
  length,
  measured: { depth },
  values: everything(t),
});

/** Up to where each set accepts it, by its id; 0 where it accepts nothing, and what turns up beside accept and reject. */
function acceptedUpTo(sets: readonly Criteria[], subject: Subject): Record<string, number | string> {
  return Object.fromEntries(
    compare(sets, subject).sets.map(({ criteria, stretches }) => {
      const [first] = stretches;
      const value = first.outcome === "accept" ? Number(first.to.toFixed(6)) : first.outcome;
      return [criteria.id, value === "reject" ? 0 : value];
    }),
  );
}

describe("undercut 5011 by ISO 5817:2014, row 1.7 of table 1", () => {
  // table 1, row 1.7: over 3 mm h ≤ 0.2 t and 1 mm (D), 0.1 t and 0.5 mm (C), 0.05 t and 0.5 mm (B);
  // from 0.5 to 3 mm short imperfections of h ≤ 0.2 t (D), 0.1 t (C), none (B)
  test.each([
    [10, 20, { d: 1, c: 0.5, b: 0.5 }],
    [8, 20, { d: 1, c: 0.5, b: 0.4 }],
    [14, 20, { d: 1, c: 0.5, b: 0.5 }],
    [3, 20, { d: 0.6, c: 0.3, b: 0 }],
    [3.01, 20, { d: 0.602, c: 0.301, b: 0.1505 }],
    // over 25 mm in 100 mm it is no short imperfection any more
    [3, 26, { d: 0, c: 0, b: 0 }],
    [3.01, 26, { d: 0.602, c: 0.301, b: 0.1505 }],
  ])("t = %d mm, l = %d mm", (t, length, levels) => {
    const upTo = acceptedUpTo(SETS, undercut(t, 0.2, length));
    expect(upTo).toMatchObject({
      "iso-5817-2014-d": levels.d,
      "iso-5817-2014-c": levels.c,
      "iso-5817-2014-b": levels.b,
    });
  });
});

describe("undercut by the other documents", () => {
  // AWS D1.1 table 8.1: static 2 mm, of which 50 mm in 300 mm may be over 1 mm; cyclic 0.25 mm across a tensile stress, else 1 mm.
  // ASME B31.3 table 341.3.2: girth H, the lesser of 1 mm and 0.25 Tw; longitudinal A, none. API 1104 9.7: the lesser of 0.8 mm
  // and 12.5 % of the wall; over 0.4 mm or 6 % no more than 50 mm in 300 mm. Values of public sources that quote them.
  test.each([
    ["across-tension", 10, 20, { staticLoading: 2, cyclic: 0.25, girth: 1, longitudinal: 0, api: 0.8 }],
    ["other", 10, 20, { staticLoading: 2, cyclic: 1, girth: 1, longitudinal: 0, api: 0.8 }],
    ["other", 3, 20, { staticLoading: 2, cyclic: 1, girth: 0.75, longitudinal: 0, api: 0.375 }],
    ["other", 10, 60, { staticLoading: 1, cyclic: 1, girth: 1, longitudinal: 0, api: 0.4 }],
    ["other", 30, 60, { staticLoading: 2, cyclic: 1, girth: 1, longitudinal: 0, api: 0.4 }],
  ] as const)("%s, t = %d mm, l = %d mm", (stress, t, length, limits) => {
    const upTo = acceptedUpTo(comparedCriteria(stress), undercut(t, 0.2, length));
    expect(Object.values(upTo).slice(3)).toEqual(Object.values(limits));
  });
});

test("ISO 5817 at its three levels, AWS D1.1 static and cyclic, ASME B31.3 girth and longitudinal, and API 1104", () => {
  expect(SETS.map(({ id }) => id)).toEqual([
    "iso-5817-2014-b",
    "iso-5817-2014-c",
    "iso-5817-2014-d",
    "aws-d1.1-static-across",
    "aws-d1.1-cyclic-across",
    "asme-b31.3-normal-girth",
    "asme-b31.3-normal-longitudinal",
    "api-1104",
  ]);
});

describe("what is asked", () => {
  test.each([
    ["continuous-undercut", "cap", ["depth", "length"], ["t"], "depth"],
    ["excess-weld-metal", "cap", ["height"], ["t", "b"], "height"],
    ["excess-penetration", "root", ["height"], ["t", "bRoot"], "height"],
    ["surface-pore", "fillet", ["diameter"], ["t", "a"], "diameter"],
    ["crater-pipe", "cap", ["depth"], ["t"], "depth"],
    ["incorrect-weld-toe", "cap", ["toe-angle"], ["t"], "toe-angle"],
    ["crater-crack", "cap", ["length"], ["t"], "length"],
    ["longitudinal-crack", "cap", [], ["t"], null],
    // no set speaks of it; the catalogue measures its depth
    ["inter-run-undercut", "cap", ["depth"], [], "depth"],
  ] as const)("of %s on the %s", (type, face, quantities, symbols, axis) => {
    expect(askedOf(SETS, type, face)).toEqual({ quantities, symbols, axis });
  });
});

test("a toe angle is accepted from its limit on: ISO 5817:2014 row 1.12, butt welds, 150, 110 and 90 degrees", () => {
  const subject: Subject = {
    type: "incorrect-weld-toe",
    face: "cap",
    length: 40,
    measured: { "toe-angle": 115 },
    values: everything(10),
  };
  const { sets, end } = compare(SETS, subject);
  const [b, c, d] = sets.map(({ stretches }) => stretches);
  for (const [stretches, degrees] of [
    [b, 150],
    [c, 110],
    [d, 90],
  ] as const) {
    expect(stretches).toEqual([
      { from: 0, to: degrees, outcome: "reject" },
      { from: degrees, to: end, outcome: "accept" },
    ]);
  }
  expect(sets.map(({ sentence }) => sentence.outcome)).toEqual([
    "reject",
    "accept",
    "accept",
    ...Array(5).fill("not-covered"),
  ]);
});

test("cracks are compared although nothing is measured on them", () => {
  const subject: Subject = {
    type: "longitudinal-crack",
    face: "cap",
    length: null,
    measured: {},
    values: everything(10),
  };
  const comparison = compare(SETS, subject);
  expect(comparison.axis).toBeNull();
  expect(comparison.sets.map(({ stretches }) => stretches)).toEqual(
    SETS.map(() => [{ from: 0, to: 1, outcome: "reject" }]),
  );
});

test("offered is what has a size or a row", () => {
  expect(comparedTypes("cap")).toContain("longitudinal-crack");
  expect(comparedTypes("cap")).toContain("inter-run-undercut");
  // neither is measured across, and no set has a row
  expect(comparedTypes("cap")).not.toContain("angular-misalignment");
  expect(comparedTypes("cap")).not.toContain("irregular-width");
  expect(comparedTypes("fillet")).not.toContain("excess-weld-metal");
});

/** Shares of the axis that no limit falls on. */
const GRID = Array.from({ length: 24 }, (_, n) => 0.0137 + n / 24.4);
const MEASURED = {
  depth: 0.4,
  height: 2,
  diameter: 1.6,
  "diameter-sum": 7,
  width: 1,
  difference: 2,
  gap: 1,
  "leg-shortfall": 1,
  "toe-angle": 115,
};

/** Every size on the grid at which a stretch says something else than the sentence on an imperfection of that size. */
function disagreements(sets: readonly Criteria[], subject: Subject): string[] {
  const { axis, end, sets: compared } = compare(sets, subject);
  const sizes = axis === null ? [] : GRID.map((share) => share * end);
  return compared.flatMap(({ criteria, stretches }) =>
    sizes.flatMap((size) => {
      const half = (axis === "length" ? Math.min(size, COMPARED_WELD) : (subject.length as number)) / 2;
      const indication = {
        id: "plain",
        type: subject.type,
        face: subject.face,
        start: COMPARED_WELD / 2 - half,
        end: COMPARED_WELD / 2 + half,
        measured: axis === "length" ? subject.measured : { ...subject.measured, [axis as string]: size },
      };
      const { outcome } = assess(indication, { length: COMPARED_WELD, values: subject.values }, criteria);
      const told = stretches.find(({ from, to }) => size > from && size <= to)?.outcome;
      return told === outcome
        ? []
        : [`${criteria.id}, t ${subject.values.t}, ${axis} ${size}: ${told}, not ${outcome}`];
    }),
  );
}

describe.each(STRESSES)("the stretches say what the sentence at a size says, %s", (stress) => {
  const sets = comparedCriteria(stress);
  test.each(SURFACE_FACES.flatMap((face) => comparedTypes(face).map((type) => [type, face] as const)))(
    "%s on the %s",
    (type, face) => {
      for (const t of [2, 3.01, 30]) {
        for (const length of [10, 120]) {
          const subject: Subject = { type, face, length, measured: MEASURED, values: everything(t) };
          expect(disagreements(sets, subject)).toEqual([]);
          const { sets: compared, end } = compare(sets, subject);
          expect(compared.map(({ stretches }) => [stretches[0].from, stretches.at(-1)?.to])).toEqual(
            sets.map(() => [0, end]),
          );
        }
      }
    },
  );
});
