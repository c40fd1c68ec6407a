import type { SectionRun } from "@/lib/sittings";
import { readRunPlace } from "@/prisma/stores/section-runs";
import { refuse } from "../refusal";
import { changeSitting, runStep, whyMarked } from "./change-sitting";
import { markClosedRuns } from "./mark-closed-runs";
import { keptInRun, type SaveInRun } from "./save-in-run";

/** The last version of the report goes with it, or the one that was saved last is handed in. */
export type HandInOfRun = Pick<SaveInRun, "window" | "madeAt"> & Partial<Pick<SaveInRun, "sequence" | "report">>;

/** Hands a section of a sitting in, for good, and marks it. Once more comes to the same. */
export async function handInRun(runId: string, input: HandInOfRun, now: Date) {
  const place = await readRunPlace(runId);
  if (!place) return refuse("no-such-run");
  const { window, madeAt, sequence, report } = input;
  let kept: SectionRun | undefined;
  const handedIn = await changeSitting(
    place.sittingId,
    now,
    (whole, before) => {
      const marked = whyMarked(before, runId);
      if (marked) return { next: whole, code: marked };
      const find = (runs: readonly SectionRun[]) => runs.find(({ id }) => id === runId);
      const isLast = sequence !== undefined && report !== undefined && find(whole.runs)?.state !== "handed-in";
      const saved = isLast
        ? runStep(whole, runId, { kind: "save", sequence, window, madeAt, report }, now)
        : { next: whole };
      const change = saved.code
        ? saved
        : runStep(saved.next, runId, { kind: "hand-in", windowId: window.id, madeAt }, now);
      kept = find(change.next.runs);
      return change;
    },
    runId,
  );
  if (!handedIn.ok) return refuse(handedIn.code, kept && keptInRun(kept));
  await markClosedRuns(place.sittingId, now);
  return { ok: true } as const;
}
