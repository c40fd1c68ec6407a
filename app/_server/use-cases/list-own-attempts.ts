import type { PlacedAttempt } from "@/lib/sittings";
import type { Caller } from "../caller";
import type { SatSection } from "../sitting-views";
import { listOwnSittings } from "./list-own-sittings";
import { readOwnCourse } from "./read-own-course";

/** Every section that the caller sat and may know the marks of, the latest first, each with its place in its paper's rounds. */
export async function listOwnAttempts(caller: Caller) {
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
    const read = await readOwnCourse(caller, classId, paperId);
    if (read.ok) for (const placed of read.course.attempts) places.set(placed.attempt.id, placed);
  }
  const attempts = sat
    .map(
      ({ sitting, ...one }): SatSection => ({
        ...one,
        sittingId: sitting.id,
        paperName: sitting.paperName,
        className: sitting.className,
        placed: places.get(one.runId) ?? null,
      }),
    )
    .sort((a, b) => b.closedAt.getTime() - a.closedAt.getTime());
  return { ok: true, attempts } as const;
}
