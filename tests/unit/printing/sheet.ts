import { iso5817 } from "../../../lib/criteria";
import type { PrintedSheet } from "../../../lib/printing";
import type { Call, Report } from "../../../lib/report";
import type { QuestionsResult, SectionResult } from "../../../lib/results";
import { reviewed } from "../../../lib/review";
import { DEFAULT_SETTINGS, markSection } from "../../../lib/scoring";
import type { DimensionTruth, StatementTruth } from "../../../lib/specimen";
import { BUTT_JOINT, call, exactCall, FILLET_JOINT, truthItem } from "../../support/marking-cases";

const CRITERIA = iso5817({ level: "C", edition: 2014 });

const ITEMS = [
  truthItem({ id: "undercut", type: "continuous-undercut", start: 20, end: 60, across: -6.2, size: 0.94 }),
  truthItem({ id: "pore", type: "surface-pore", start: 100, end: 100, across: 3, size: 1.26 }),
  truthItem({ id: "excess", type: "excess-weld-metal", start: 150, end: 200, across: 0, size: 4 }),
  truthItem({ id: "missed", face: "root", type: "root-concavity", start: 50, end: 80, across: 0, size: 0.8 }),
  truthItem({ id: "shallow", type: "continuous-undercut", start: 220, end: 228, across: -7, size: 0.2, neutral: true }),
];
const [UNDERCUT, PORE] = ITEMS;

/** One call a little off, one exact, one in pieces, one on nothing, one without a place. */
export const CALLS: readonly Call[] = [
  { ...exactCall(UNDERCUT, "c1"), start: 27.3, size: 1.4, sentence: "reject" },
  { ...exactCall(PORE, "c2"), sentence: "accept" },
  call({ id: "c3", type: "excess-weld-metal", start: 150, end: 172, across: 0, size: 4, sentence: "accept" }),
  call({ id: "c4", type: "excess-weld-metal", start: 174, end: 205, across: 1, size: 3.5 }),
  call({ id: "c5", type: "overlap", start: 280, end: 290, across: -7 }),
  call({ id: "c6", type: "overlap", start: 280, end: 290 }),
];

const DIMENSIONS: readonly DimensionTruth[] = [
  {
    dimension: "cap-height",
    station: null,
    value: 2.64,
    at: 102,
    along: { from: 2, step: 100, values: [1.44, 2.64, null] },
  },
  { dimension: "linear-misalignment", station: null, value: 0.31, at: 40, along: null },
];

export const REPORT: Report = {
  version: 1,
  calls: CALLS,
  measures: [
    { dimension: "cap-height", station: null, value: 3.3, at: 104 },
    { dimension: "linear-misalignment", station: null, value: null, at: null },
  ],
  statements: [],
  pieceSentence: "accept",
  answers: {},
};

/** A plate of which everything was marked but questions. */
export const PLATE: SectionResult = markSection(
  "plate",
  { items: ITEMS, clutter: [], dimensions: DIMENSIONS, statements: [], joint: BUTT_JOINT },
  REPORT,
  { ...DEFAULT_SETTINGS.plate, criteria: CRITERIA },
);

const PROFILE: StatementTruth = { statement: "profile", right: ["mitre", "convex"], value: 0.38, limit: 0.3 };

/** A fillet with a throat, a statement and two questions. */
export const FILLET: SectionResult = withQuestions(
  markSection(
    "fillet",
    {
      items: [],
      clutter: [],
      dimensions: [{ dimension: "throat", station: 2, value: 4.93, at: 103, along: null }],
      statements: [PROFILE],
      joint: FILLET_JOINT,
    },
    {
      ...REPORT,
      calls: [],
      measures: [{ dimension: "throat", station: 2, value: 4.4, at: null }],
      statements: [{ statement: "profile", answer: "concave" }],
    },
    DEFAULT_SETTINGS.fillet,
  ),
);

function withQuestions(result: SectionResult): SectionResult {
  const line = { kind: "k", options: ["6 mm", "7 mm", "8 mm", "9 mm"], key: 2, explanation: "It is.", place: null };
  const questions: QuestionsResult = {
    part: "questions",
    worth: 0,
    earned: 0,
    lines: [
      { ...line, question: "q1", stem: "How wide, at most?", written: 2, worth: 0, earned: 0 },
      { ...line, question: "q2", stem: "And then?", written: null, worth: 0, earned: 0 },
    ],
  };
  return { ...result, questions };
}

export const SHEET: PrintedSheet = {
  practiceId: "piece-1",
  learner: { name: 'Ása Łuk, called "Ö"', signInName: "asa" },
  work: { kind: "practice" },
  startedAt: new Date("2026-03-02T08:00:00.000Z"),
  handedInAt: new Date("2026-03-02T09:41:07.250Z"),
  joint: "Butt plate, 10 mm",
  criteria: "ISO 5817, level C (2014)",
  sections: [PLATE, FILLET],
  reviews: [reviewed(PLATE, []), reviewed(FILLET, [])],
  truths: ITEMS,
  calls: CALLS,
};
