import type { SectionObservations, TruthObservation } from "../../lib/progress";

/** A miss of a surface pore on the cap, with what is said of it otherwise. */
export const truthOf = (of: Partial<TruthObservation>): TruthObservation => ({
  truthId: "1",
  type: "surface-pore",
  face: "cap",
  start: 0,
  end: 0,
  across: 0,
  size: 1,
  eye: { measure: "size", value: 1 },
  difficulty: 0,
  neutral: false,
  found: false,
  placed: 0,
  order: null,
  namedAs: null,
  sizeWritten: null,
  sizeError: null,
  startError: null,
  endError: null,
  acrossError: null,
  sentence: null,
  ...of,
});

/** A handed-in plate with these and nothing besides. */
export const observedOf = (truths: readonly TruthObservation[]): SectionObservations => ({
  version: 3,
  section: "plate",
  mark: 0,
  passMark: 70,
  passed: false,
  weldLength: 600,
  seconds: null,
  notCounted: 0,
  leftOpen: 0,
  truths: [...truths],
  falseCalls: [],
  clutter: [],
  dimensions: [],
  questions: [],
  pieceSentence: null,
});
