import { expect, test } from "vitest";
import { type SectionObservations, stepsAlong, type TruthObservation } from "@/lib/progress";

const find = (face: TruthObservation["face"], start: number, order: number | null): TruthObservation => ({
  truthId: `${face}-${start}`,
  type: "surface-pore",
  face,
  start,
  end: start,
  across: 0,
  size: 1,
  eye: { measure: "size", value: 1 },
  difficulty: 0,
  neutral: false,
  found: order !== null,
  placed: order === null ? 0 : 1,
  order,
  namedAs: null,
  sizeWritten: null,
  sizeError: null,
  startError: null,
  endError: null,
  acrossError: null,
  sentence: null,
});

const piece = (truths: readonly TruthObservation[]): SectionObservations => ({
  version: 1,
  section: "plate",
  mark: 0,
  passMark: 70,
  passed: false,
  weldLength: 600,
  seconds: null,
  notCounted: 0,
  truths: [...truths],
  falseCalls: [],
  clutter: [],
  dimensions: [],
  questions: [],
  pieceSentence: null,
});

test("steps are counted on each face by itself, in the order of the report, and misses are none", () => {
  // cap 10, 60, 40: one step along and one back; the root in between is a walk of its own
  const walked = [
    find("cap", 60, 3),
    find("cap", 10, 1),
    find("root", 5, 2),
    find("cap", 40, 4),
    find("cap", 90, null),
  ];
  expect(stepsAlong([piece(walked)])).toEqual({ along: 1, all: 2 });
  expect(stepsAlong([piece(walked), piece([find("root", 20, 2), find("root", 80, 5)])])).toEqual({ along: 2, all: 3 });
});

test("a single find is no step", () => {
  expect(stepsAlong([piece([find("cap", 10, 1), find("root", 20, 2)])])).toEqual({ along: 0, all: 0 });
});
