import type { Blueprint, SectionBlueprint, Slot } from "./blueprint";
import { ANY_JOINT } from "./joint";

const slot = (count: number, families: Slot["families"], band: Slot["band"], place: Slot["place"] = "any"): Slot => ({
  count,
  families,
  band,
  place,
});

/** For practice: about 35 small, 40 medium and 25 large ones of a hundred, of any kind; sizes near limits as well. */
const PRACTICE_ON_ANY: Pick<SectionBlueprint, "neutral" | "nearLimits" | "expectedMark"> = {
  neutral: [1, 4],
  nearLimits: true,
  expectedMark: null,
};

export const PRACTICE: Blueprint = {
  joint: ANY_JOINT,
  sections: {
    cap: {
      slots: [slot(2, "any", "small"), slot(3, "any", "medium"), slot(2, "any", "large")],
      extras: 3,
      cleanLength: 60,
      clutter: [2, 5],
      ...PRACTICE_ON_ANY,
    },
    root: {
      slots: [slot(2, "any", "small"), slot(2, "any", "medium"), slot(1, "any", "large")],
      extras: 2,
      cleanLength: 100,
      clutter: [1, 4],
      ...PRACTICE_ON_ANY,
    },
  },
};

/** For a paper: every specimen of it with the same kinds in the same sizes, clear of limits, and equally hard. */
const ASSESSMENT: Blueprint = {
  joint: ANY_JOINT,
  sections: {
    cap: {
      slots: [
        slot(1, ["crack"], "medium"),
        slot(1, ["cavity"], "small"),
        slot(1, ["cavity", "restart", "slag"], "large"),
        slot(1, ["toe-groove", "fusion"], "medium", "toe"),
        slot(1, ["slag", "fusion", "overlap"], "medium"),
        slot(1, ["excess-metal", "missing-metal", "shape", "misalignment"], "medium"),
        slot(1, ["surface-mark"], "small", "plate"),
      ],
      extras: 0,
      cleanLength: 60,
      neutral: [1, 4],
      clutter: [2, 5],
      nearLimits: false,
      expectedMark: 67.5,
    },
    root: {
      slots: [
        slot(1, ["fusion"], "medium"),
        slot(1, ["missing-metal", "excess-metal", "toe-groove"], "medium"),
        slot(1, ["cavity", "slag"], "small"),
        slot(1, ["crack", "restart"], "medium"),
        slot(1, ["surface-mark"], "large", "plate"),
      ],
      extras: 0,
      cleanLength: 100,
      neutral: [1, 4],
      clutter: [1, 4],
      nearLimits: false,
      expectedMark: 69,
    },
  },
};

/**
 * The last rehearsal before a sitting: 22 to find, 11 on either face, nearly twice as many as in a paper, a good part of them on
 * the plates beside the weld. That is about what has room 25 mm apart: with one more on either face, one plate in twenty has
 * none, such as one whose cap is a single weave.
 */
const FINAL_MOCK: Blueprint = {
  joint: { ...ANY_JOINT, thickness: [12, 20] },
  sections: {
    cap: {
      slots: [slot(3, "any", "small"), slot(5, "any", "medium"), slot(3, ["surface-mark"], "any", "plate")],
      extras: 2,
      cleanLength: 40,
      neutral: [0, 1],
      clutter: [0, 1],
      nearLimits: false,
      expectedMark: null,
    },
    root: {
      slots: [slot(2, "any", "small"), slot(5, "any", "medium"), slot(4, ["surface-mark"], "any", "plate")],
      extras: 2,
      cleanLength: 40,
      neutral: [0, 0],
      clutter: [0, 0],
      nearLimits: false,
      expectedMark: null,
    },
  },
};

const NOTHING: SectionBlueprint = {
  slots: [],
  extras: 0,
  cleanLength: 300,
  neutral: [1, 4],
  clutter: [3, 6],
  nearLimits: false,
  expectedMark: null,
};

/** A plate with nothing to report, to learn not to report anything. */
export const CLEAN: Blueprint = { joint: ANY_JOINT, sections: { cap: NOTHING, root: NOTHING } };

/** The blueprints that come with the tool, by name. */
export const BLUEPRINTS = {
  practice: PRACTICE,
  assessment: ASSESSMENT,
  "final-mock": FINAL_MOCK,
  clean: CLEAN,
} as const satisfies Record<string, Blueprint>;
