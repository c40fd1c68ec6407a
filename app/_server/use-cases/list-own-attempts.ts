import { courseRule, type PlacedAttempt } from "@/lib/sittings";
import { readPaper } from "@/prisma/stores/papers";
import type { Caller } from "../caller";
import { requireSignedIn } from "../permissions";
import type { SatSection } from "../sitting-views";
import { courseAsKnown } from "../sittings/courses-of-class";
import { listOwnSittings } from "./list-own-sittings";

/** Every section that the caller sat and may know the marks of, the latest first, each with its place in its paper's rounds. */
export async function listOwnAttempts(caller: Caller) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const listed = await listOwnSittings(caller);
  if (!listed.ok) return listed;
  const sat = listed.sittings.flatMap((sitting) =>
    sitting.sections.flatMap(({ mark, closedAt, runId, practiceId, state }) =>
      mark && closedAt ? [{ sitting, mark, closedAt, runId, practiceId, isVoid: state === "void" }] : [],
    ),
  );
  const papers = new Map(sat.map(({ sitting }) => [`${sitting.classId} ${sitting.paperId}`, sitting]));
  const places = new Map<string, PlacedAttempt>();
  for (const { classId, paperId } of papers.values()) {
    const paper = await readPaper(paperId);
    if (!paper) continue;
    // of classes that are archived or left as well: what was sat there stays the caller's
    const rule = courseRule(paper.current.paper);
    const { attempts } = await courseAsKnown(classId, paperId, signedIn.actor.id, rule, caller.clock());
    for (const placed of attempts) places.set(placed.attempt.id, placed);
  }
  const attempts = sat
    .map(
      ({ sitting, ...one }): SatSection => ({
        ...one,
        sittingId: sitting.id,
        paperId: sitting.paperId,
        paperName: sitting.paperName,
        className: sitting.className,
        placed: places.get(one.runId) ?? null,
      }),
    )
    .sort((a, b) => b.closedAt.getTime() - a.closedAt.getTime());
  return { ok: true, attempts } as const;
}
