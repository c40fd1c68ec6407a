import type { WritingWindow } from "@/lib/practice";
import type { Report } from "@/lib/report";
import type { SectionRun } from "@/lib/sittings";
import { notePresence } from "@/prisma/stores/presences";
import { readRunPlace } from "@/prisma/stores/section-runs";
import { refuse } from "../refusal";
import { changeSitting, runStep, whyMarked } from "./change-sitting";

/** A version of a report as the browser sends it from a section of a sitting. */
export interface SaveInRun {
  readonly sequence: number;
  readonly report: Report;
  readonly window: WritingWindow;
  /** When it was written, by the server's clock as the browser knows it. */
  readonly madeAt: Date;
}

/** Keeps a version of the report of a run, if its clock, its live window and the order of versions allow it. */
export async function saveInRun(runId: string, userId: string, save: SaveInRun, now: Date) {
  const place = await readRunPlace(runId);
  if (!place) return refuse("no-such-run");
  const { sittingId } = place;
  const event = { kind: "save", ...save } as const;
  let kept: SectionRun | undefined;
  const saved = await changeSitting(
    sittingId,
    now,
    (whole, stored) => {
      const marked = whyMarked(stored, runId);
      const change = marked ? { next: whole, code: marked } : runStep(whole, runId, event, now);
      kept = change.next.runs.find(({ id }) => id === runId);
      return change;
    },
    runId,
  );
  await notePresence(sittingId, userId, now);
  if (saved.ok) return { ok: true, sequence: save.sequence, savedAt: kept?.savedAt ?? now } as const;
  return refuse(saved.code, kept && keptInRun(kept));
}

/** What is kept of a run, for the window that does not know it. */
export const keptInRun = ({ sequence, report, savedAt }: SectionRun) => ({ sequence, report, savedAt });
