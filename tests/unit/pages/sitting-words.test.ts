import { expect, test } from "vitest";
import type { OwnSection, OwnSitting } from "@/app/_server/sitting-views";
import { standingOf } from "@/app/(learner)/sitting-words";

const section = (changes: Partial<OwnSection>): OwnSection => ({
  runId: "run",
  practiceId: "practice",
  section: "plate",
  isBorderline: false,
  state: "waiting",
  closedBy: null,
  clock: { state: "not-started", deadline: null, remaining: 7_200_000 },
  piece: "ready",
  stage: "",
  passMark: 70,
  factor: 1,
  savedAt: null,
  closedAt: null,
  voidReason: null,
  mayKnowMarks: false,
  mark: null,
  ...changes,
});
const plate = (changes: Partial<OwnSection> = {}) => section(changes);
const fillet = (changes: Partial<OwnSection> = {}) => section({ section: "fillet", ...changes });
const sitting = (changes: Partial<OwnSitting>): OwnSitting => ({
  id: "sitting",
  paperId: "paper",
  paperName: "Paper",
  classId: "class",
  className: "Monday class",
  state: "running",
  plannedAt: new Date(0),
  releasedAt: null,
  wasClosed: false,
  voidReason: null,
  isPaused: false,
  feedback: "on-release",
  sections: [plate(), fillet()],
  ...changes,
});

test.each([
  ["planned", sitting({ state: "planned" }), true, false, "as soon as your tutor opens it"],
  ["open, outside", sitting({ state: "open" }), false, true, "Come in now"],
  ["open, inside", sitting({ state: "open" }), true, true, "You are in"],
  ["begun, outside", sitting({}), false, true, "It has begun. Come in"],
  ["begun, inside", sitting({}), true, true, "Start the section you want to sit first"],
  ["at it", sitting({ sections: [plate({ state: "running" }), fillet()] }), true, true, "butt plate is on the bench"],
  ["one of two", sitting({ sections: [plate({ state: "handed-in" }), fillet()] }), true, true, "Start the fillet weld"],
  ["paused", sitting({ state: "paused", sections: [plate({ state: "paused" })] }), true, true, "every clock stands"],
  [
    "all handed in",
    sitting({ sections: [plate({ state: "handed-in" })] }),
    true,
    false,
    "when your tutor releases them",
  ],
  [
    "marks at once",
    sitting({ sections: [plate({ state: "handed-in", mayKnowMarks: true })] }),
    true,
    false,
    "sheets are there",
  ],
  ["opened again for others", sitting({ wasClosed: true }), true, false, "You have sat nothing"],
  [
    "opened again for this one",
    sitting({ wasClosed: true, sections: [plate({ state: "running" })] }),
    true,
    true,
    "on the bench",
  ],
  [
    "closed",
    sitting({ state: "closed", sections: [plate({ state: "expired" })] }),
    true,
    false,
    "when your tutor releases them",
  ],
  ["closed, never come", sitting({ state: "closed" }), true, false, "You have sat nothing"],
  [
    "released",
    sitting({ state: "released", sections: [plate({ state: "handed-in", mayKnowMarks: true })] }),
    true,
    false,
    "Your marks are there",
  ],
  [
    "void",
    sitting({ state: "void", voidReason: "the power was cut" }),
    true,
    false,
    "It does not count: the power was cut",
  ],
  ["late, nothing made yet", sitting({ sections: [] }), false, true, "Come in"],
] as const)("%s", (_, given, isIn, isOn, words) => {
  const standing = standingOf(given, isIn);
  expect(standing.isOn).toBe(isOn);
  expect(standing.next).toContain(words);
});
