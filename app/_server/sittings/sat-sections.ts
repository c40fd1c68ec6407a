import type { Work } from "@/lib/printing";
import { courseRule } from "@/lib/sittings";
import { readPaper } from "@/prisma/stores/papers";
import { listSittingsOf } from "@/prisma/stores/sittings";
import type { SatSection } from "../sitting-views";
import { byClock } from "./change-sitting";
import { coursesIn } from "./courses-of-class";

export type SatByLearner = SatSection & { readonly userId: string };

/**
 * Every marked section of the sittings of a class that are over, the latest first, as its tutors may know it: from closing on, and
 * not while one is open again for somebody. What was made void is among them.
 */
export async function satInClass(classId: string, now: Date): Promise<readonly SatByLearner[]> {
  const sittings = await listSittingsOf(classId);
  const paperIds = [...new Set(sittings.map(({ paperId }) => paperId))];
  const placed = await Promise.all(
    paperIds.map(async (paperId) => {
      const kept = await readPaper(paperId);
      if (!kept) return [];
      const ofPaper = sittings.filter((sitting) => sitting.paperId === paperId);
      const courses = [...coursesIn(ofPaper, courseRule(kept.current.paper)).values()];
      return courses.flatMap(({ attempts }) => attempts.map((one) => [one.attempt.id, one] as const));
    }),
  );
  const places = new Map(placed.flat());
  return sittings
    .flatMap((stored) => {
      const { sitting } = byClock(stored, now);
      if (!OVER.includes(sitting.state)) return [];
      return stored.runs.flatMap(({ run, practiceId, marks: [mark] }) =>
        mark && run.closedAt
          ? [
              {
                runId: run.id,
                userId: run.userId,
                practiceId,
                sittingId: sitting.id,
                paperId: stored.paperId,
                paperName: sitting.paper.name,
                className: stored.groupName,
                closedAt: run.closedAt,
                mark,
                isVoid: run.state === "void" || sitting.state === "void",
                placed: places.get(run.id) ?? null,
              },
            ]
          : [],
      );
    })
    .sort((a, b) => b.closedAt.getTime() - a.closedAt.getTime() || (a.runId < b.runId ? -1 : 1));
}

const OVER: readonly string[] = ["closed", "released", "void"];

/** What lists and files say that it was handed in for. */
export const workOf = ({ paperName, isVoid, placed }: SatSection): Work => ({
  kind: "sitting",
  paper: paperName,
  attempt: placed?.kind ?? null,
  round: placed?.round ?? null,
  isVoid,
});
