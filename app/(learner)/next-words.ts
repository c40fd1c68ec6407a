import { type ImperfectionType, imperfection } from "@/lib/imperfections";
import type { PracticeAims } from "@/lib/progress";

function listed(types: readonly ImperfectionType[]): string {
  const names = types.map((type) => imperfection(type).name.toLowerCase());
  const last = names.pop() ?? "";
  return names.length === 0 ? last : `${names.join(", ")} and ${last}`;
}

/** So many types of each are named. */
const NAMED = 2;

/**
 * What a learner's pieces are chosen by, in one sentence that they may read before any of them; null aims while what they handed in
 * is added up. It goes by the learner alone, so it says nothing of what is on the piece.
 */
export function aimWords(aims: PracticeAims | null): string {
  if (aims === null) return "What you have handed in is being added up; your next pieces are chosen by it.";
  const { weak, due, observations } = aims;
  if (observations === 0) return "Nothing is known of you yet: your first pieces are there to see what you find.";
  const seldom = weak.length > 0 ? `you find ${listed(weak.slice(0, NAMED))} too seldom` : "";
  const again = due.length > 0 ? `it is time to look for ${listed(due.slice(0, NAMED))} again` : "";
  const why = [seldom, again].filter((part) => part !== "").join(", and ");
  return why === ""
    ? "You find well what you have met so far, so your pieces bring back what is little known of you, and what is new."
    : `Your pieces are chosen by how you do: at present ${why}; any one of them may have that or not.`;
}
