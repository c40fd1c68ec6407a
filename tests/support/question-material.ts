import { BUILT_IN_CRITERIA, type Criteria } from "../../lib/criteria";
import type { Material } from "../../lib/questions";
import type { RandomStream } from "../../lib/random";
import { syntheticFillet, syntheticPlate } from "./synthetic-truths";

/** A set as a tutor may make it: two rows and nothing else. */
export const FEW_ROWS: Criteria = {
  version: 1,
  id: "house",
  name: "House rules",
  edition: "House rules, first edition",
  notes: "",
  rows: [
    {
      id: "h1",
      clause: "1",
      name: "Undercut",
      types: ["continuous-undercut", "intermittent-undercut"],
      faces: ["cap", "fillet"],
      ranges: [],
      limit: { kind: "at-most", quantity: "depth", formula: { constant: 0.6 } },
      sums: [],
      evidence: "own",
      notes: "",
    },
    {
      id: "h2",
      clause: "2",
      name: "Cracks",
      types: ["longitudinal-crack", "crater-crack"],
      faces: ["cap", "root", "fillet"],
      ranges: [],
      limit: { kind: "not-permitted" },
      sums: [],
      evidence: "own",
      notes: "",
    },
  ],
  sections: [],
};

/** Nothing in it but what is from memory. */
const FROM_MEMORY: Criteria = {
  ...FEW_ROWS,
  id: "memory",
  name: "Remembered rules",
  rows: FEW_ROWS.rows.map((row) => ({ ...row, evidence: "memory" as const })),
};

const SETS: readonly Criteria[] = [...BUILT_IN_CRITERIA, FEW_ROWS, FROM_MEMORY];

/** A made-up piece of either section with some criteria: in half of the cases ISO 5817:2014. */
export function drawMaterial(random: RandomStream): Material {
  const criteria = random.chance(0.5) ? random.pick(SETS.slice(0, 6)) : random.pick(SETS);
  return random.chance(0.5)
    ? { section: "plate", truth: syntheticPlate(random), criteria }
    : { section: "fillet", truth: syntheticFillet(random), criteria };
}
