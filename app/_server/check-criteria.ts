import { z } from "zod";
import { builtInCriteria, type Problem, readCriteria, wholeCriteria } from "@/lib/criteria";
import { refuse } from "./refusal";

const sentSchema = z.object({ basedOn: z.string().nullable(), own: z.record(z.string(), z.unknown()) });

/**
 * Criteria as they were sent, `{ basedOn, own }`, under the id that they will have, or every field that is not right. What
 * comes out together with the set that they build on is read as well: its first rows are the own ones.
 */
export function checkCriteria(sent: unknown, id: string) {
  const parsed = sentSchema.safeParse(sent);
  if (!parsed.success) return malformed([{ field: "", problem: "an object with basedOn and own" }]);
  const { basedOn } = parsed.data;
  if (basedOn !== null && !builtInCriteria(basedOn)) {
    return malformed([{ field: "basedOn", problem: "the id of a built-in set, or null" }]);
  }
  const own = readCriteria({ ...parsed.data.own, id });
  if (!own.ok) return malformed(own.problems);
  const whole = readCriteria(wholeCriteria({ basedOn, own: own.criteria }));
  return whole.ok ? ({ ok: true, basedOn, own: own.criteria } as const) : malformed(whole.problems);
}

const malformed = (problems: readonly Problem[]) => refuse("malformed-criteria", { problems });
