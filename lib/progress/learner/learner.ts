import { z } from "zod";
import { IMPERFECTION_TYPES, type ImperfectionType, likeness } from "../../imperfections";
import type { SectionObservations, TruthObservation } from "../observations/observation";
import { afterPractice, dueSchema } from "./due";
import { afterOutcome, NEW_SKILL, skillSchema } from "./skill";

const typeSchema = z.enum(IMPERFECTION_TYPES as readonly [ImperfectionType, ...ImperfectionType[]]);

/**
 * What is kept of one learner to choose what comes next. Unlike a tally it depends on the order: sections are taken in as they
 * were handed in.
 */
export const learnerSchema = z.strictObject({
  version: z.literal(1),
  /** Finding and naming are learned apart. */
  found: skillSchema,
  named: skillSchema,
  due: z.partialRecord(typeSchema, dueSchema),
  /** The last pieces, newest last: which types were on them; none on a clean one. */
  recent: z.array(z.array(typeSchema)),
});
export type Learner = z.infer<typeof learnerSchema>;

export const NEW_LEARNER: Learner = { version: 1, found: NEW_SKILL, named: NEW_SKILL, due: {}, recent: [] };

/** So many of the last pieces are remembered. */
const REMEMBERED = 10;

/**
 * The learner after one more handed-in section. An outcome is how far the call was in the right place, and how like the name was
 * (1 exact, 0.5 alike, 0 else or none); only finds are named. Neutral features count neither way.
 * @param at when it was handed in, milliseconds since 1970
 */
export function afterSection(learner: Learner, observed: SectionObservations, at: number): Learner {
  const real = observed.truths.filter(({ neutral }) => !neutral);
  let { found, named } = learner;
  for (const truth of real) {
    found = afterOutcome(found, truth.type, truth.difficulty, truth.placed);
    // how hard a name is is not known beforehand; the learner's standing with the type takes it in
    if (truth.found) named = afterOutcome(named, truth.type, 0, namingOutcome(truth));
  }
  const types = [...new Set(real.map(({ type }) => type))];
  const due = { ...learner.due };
  for (const type of types) {
    const outcomes = real.filter((truth) => truth.type === type).map(({ placed }) => placed);
    const success = outcomes.reduce((sum, outcome) => sum + outcome, 0) / outcomes.length;
    due[type] = afterPractice(due[type], success, at);
  }
  const recent = [...learner.recent, types].slice(-REMEMBERED);
  return { version: 1, found, named, due, recent };
}

const namingOutcome = ({ type, namedAs }: TruthObservation): number => (namedAs === null ? 0 : likeness(type, namedAs));
