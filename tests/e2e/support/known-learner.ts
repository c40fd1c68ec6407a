import Database from "libsql";
import { type Learner, NEW_LEARNER, NEW_SKILL } from "../../../lib/progress";
import { readTruth } from "./truth";

/**
 * Makes the learner of an open practice, as they were known when its piece was chosen, one who seldom finds any of the types on it, so
 * that the reason does not hang on chance. Answers how many indications it has.
 */
export function rememberAsWeak(practiceId: string): number {
  const real = readTruth(practiceId).filter(({ neutral }) => !neutral);
  const types = [...new Set(real.map(({ type }) => type))];
  const seldom = { value: -3, n: 50, information: 10 };
  const learner: Learner = {
    ...NEW_LEARNER,
    found: {
      general: { value: 2, n: 200, information: 40 },
      types: Object.fromEntries(types.map((type) => [type, seldom])),
    },
    named: NEW_SKILL,
    recent: [types],
  };
  const database = new Database("test-results/e2e.db");
  const { changes } = database
    .prepare("UPDATE NextPiece SET learner = ? WHERE specimenId = (SELECT specimenId FROM Practice WHERE id = ?)")
    .run(JSON.stringify(learner), practiceId);
  database.close();
  if (changes !== 1) throw new Error("the piece of this practice was not chosen for its learner");
  return real.length;
}
