import { expect, test } from "vitest";
import { measuredValues, nominalValues } from "@/lib/criteria";

test("a butt weld of full penetration is as thick as its plate", () => {
  expect(nominalValues({ kind: "butt", process: "111", position: "PA", thickness: 10 })).toEqual({ t: 10, s: 10 });
});

test("a fillet goes by its thinner plate; z 7 has a throat of 4.950, a 5 a leg of 7.071 (a = z / sqrt 2)", () => {
  const facts = {
    kind: "fillet",
    process: "135",
    position: "PB",
    baseThickness: 12,
    standingThickness: 8,
    stations: [],
  } as const;
  const z7 = nominalValues({ ...facts, size: { symbol: "z", value: 7 } });
  expect(z7).toMatchObject({ t: 8, z: 7 });
  expect(z7.a).toBeCloseTo(4.95, 3);
  const a5 = nominalValues({ ...facts, size: { symbol: "a", value: 5 } });
  expect(a5).toMatchObject({ t: 8, a: 5 });
  expect(a5.z).toBeCloseTo(7.071, 3);
});

test("what was measured: cap width, smallest throat, and the face between legs of 6 and 8 mm is 10 mm wide", () => {
  expect(measuredValues([])).toEqual({});
  expect(measuredValues([{ dimension: "weld-width", station: null, value: 15.5 }])).toEqual({ b: 15.5 });
  expect(
    measuredValues([
      { dimension: "base-leg", station: 1, value: 6 },
      { dimension: "standing-leg", station: 1, value: 8 },
      { dimension: "base-leg", station: 2, value: 30 },
      { dimension: "standing-leg", station: 2, value: null },
      { dimension: "smallest-throat", station: null, value: 4.6 },
    ]),
  ).toEqual({ b: 10, aA: 4.6 });
});
