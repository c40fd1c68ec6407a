import type { StoredSitting } from "@/prisma/stores/sittings";
import type { ListedSitting } from "../sitting-views";
import { byClock } from "./change-sitting";

/** A sitting as lists show it, as the clock has it. */
export function listedSitting(stored: StoredSitting, now: Date): ListedSitting {
  const { sitting, runs } = byClock(stored, now);
  const { id, state, plannedAt, paper } = sitting;
  // who was erased since was there all the same
  const erased = stored.erased.flatMap(({ sections }) => sections);
  return {
    id,
    state,
    plannedAt,
    classId: stored.groupId,
    className: stored.groupName,
    paperId: stored.paperId,
    paperName: paper.name,
    learners: new Set(runs.map(({ userId }) => userId)).size + stored.erased.length,
    sections: runs.length + erased.length,
    closed: runs.filter(({ closedAt }) => closedAt !== null).length + erased.filter(({ isClosed }) => isClosed).length,
  };
}
