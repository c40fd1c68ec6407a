import { DEFAULT_CRITERIA } from "@/lib/criteria";
import { defaultPaper, type Paper } from "@/lib/sittings";

/** In-house criteria of the demo, built on the usual ones: `{ basedOn, own }` as a tutor sends them. Invented limits. */
export const HOUSE_RULES = {
  basedOn: DEFAULT_CRITERIA.id,
  own: {
    version: 1,
    name: "Tidewater house rules",
    edition: "Tidewater house rules, second edition",
    notes: "Stricter than the standard where our customers have complained.",
    rows: [
      {
        id: "h1",
        clause: "1",
        name: "Undercut",
        types: ["continuous-undercut", "intermittent-undercut"],
        faces: ["cap", "fillet"],
        ranges: [],
        limit: { kind: "at-most", quantity: "depth", formula: { constant: 0.3 } },
        sums: [],
        evidence: "own",
        notes: "Whatever the thickness.",
      },
      {
        id: "h2",
        clause: "2",
        name: "Stray arc",
        types: ["stray-arc"],
        faces: ["cap", "root", "fillet"],
        ranges: [],
        limit: { kind: "not-permitted" },
        sums: [],
        evidence: "own",
        notes: "",
      },
    ],
    sections: [],
  },
} as const;

const usual = defaultPaper();
const only = (section: "plate" | "fillet") => usual.sections.filter((one) => one.section === section);

/** Papers of the demo by key. One piece for all of a sitting keeps the number of pieces small. */
export const DEMO_PAPERS = {
  /** As a tutor finds it, but for its name and its forms. */
  both: (): Paper => ({ ...usual, name: "Monthly check: plate and fillet", forms: "same" }),
  short: (): Paper => ({
    ...usual,
    name: "Fillet in twenty-five minutes",
    forms: "same",
    breakMinutes: 0,
    sections: only("fillet").map((one) => ({ ...one, minutes: 25, passMark: 75 })),
  }),
  house: (houseId: string): Paper => ({
    ...usual,
    name: "Plate by the house rules",
    forms: "same",
    breakMinutes: 0,
    resits: 2,
    sections: only("plate").map((one) => ({
      ...one,
      minutes: 60,
      criteriaId: houseId,
      questionCount: 6,
      piece: { ...one.piece, blueprint: "practice" },
    })),
  }),
} as const;
export type DemoPaper = keyof typeof DEMO_PAPERS;
