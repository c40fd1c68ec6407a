import { isSettled } from "@/lib/sittings";
import { readPractice } from "@/prisma/stores/practices";
import { readSitting } from "@/prisma/stores/sittings";
import { markPractice } from "../mark-practice";
import { secondsOfRun } from "../progress/observe";
import { sectionOf } from "./new-run";

/** Marks every closed section of a sitting that takes no late packet any more. One that cannot be marked keeps no other back. */
export async function markClosedRuns(sittingId: string, now: Date): Promise<void> {
  const stored = await readSitting(sittingId);
  if (!stored) return;
  for (const { run, practiceId, isMarked } of stored.runs) {
    if (isMarked || run.closedAt === null || !isSettled(run, stored.sitting, now)) continue;
    const practice = await readPractice(practiceId);
    if (!practice || practice.state === "handed-in") continue;
    try {
      const { weights, questionCount } = sectionOf(stored.sitting.paper, run.section);
      const seconds = secondsOfRun(run, stored.sitting);
      await markPractice(practice, run.closedAt, seconds, { weights, questions: questionCount });
    } catch (error) {
      // the report is kept, and the next sweep tries again
      console.error(`section ${run.id} could not be marked:`, error instanceof Error ? error.message : error);
    }
  }
}
