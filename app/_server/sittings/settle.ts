import { shownMark } from "@/lib/results";
import { isBorderline, type Paper, standardErrorOf, stepSitting } from "@/lib/sittings";
import { readPaperVersion } from "@/prisma/stores/papers";
import { readSitting, type StoredRun, type StoredSitting } from "@/prisma/stores/sittings";
import type { SpecimenSource } from "../generation/specimen-source";
import { byClock, changeSitting, sittingStep } from "./change-sitting";
import { markClosedRuns } from "./mark-closed-runs";
import { orderPiece, runOn, sectionOf } from "./new-run";

/**
 * Brings a sitting up to the clock: closes what it has closed, marks what can change no more and offers parallel pieces.
 * Doing it twice, or in two processes at once, comes to the same.
 */
export async function settleSitting(id: string, now: Date, specimens: SpecimenSource): Promise<void> {
  const ticked = await changeSitting(id, now, (whole) => ({ next: whole }));
  if (!ticked.ok) return;
  await markClosedRuns(id, now);
  const stored = await readSitting(id);
  if (!stored) return;
  await offerParallelPieces(stored, now, specimens);
}

/** Gives a parallel piece to everybody just short of a pass mark, once, where the paper has that. */
async function offerParallelPieces(stored: StoredSitting, now: Date, specimens: SpecimenSource): Promise<void> {
  const { sitting, runs } = stored;
  if (!sitting.paper.borderlinePiece || (sitting.state !== "running" && sitting.state !== "paused")) return;
  for (const first of runs.filter((one) => isNearlyPassed(one, sitting.paper) && !hasPiece(one, runs))) {
    const { userId, section, factor } = first.run;
    const version = await readPaperVersion(stored.paperVersionId);
    if (!version) return;
    const whole = byClock(stored, now);
    const draft = runOn({ userId, section, factor, isBorderline: true }, version, "", now);
    if (!stepSitting(whole, { kind: "add-run", run: draft.run }, now).ok) continue;
    const specimenId = await orderPiece(sitting.paper, section, specimens, true);
    const piece = { ...draft, practice: { ...draft.practice, specimenId } };
    await changeSitting(stored.sitting.id, now, (latest) => ({
      ...sittingStep(latest, { kind: "add-run", run: piece.run }, now),
      newRuns: [piece],
    }));
  }
}

function isNearlyPassed({ run, marks, isMarked }: StoredRun, paper: Paper): boolean {
  const [mark] = marks;
  if (!isMarked || !mark || run.isBorderline || run.state === "void") return false;
  return isBorderline(
    shownMark(mark.markThousandths),
    mark.passMark,
    standardErrorOf(run.section, sectionOf(paper, run.section).weights),
  );
}

const hasPiece = ({ run }: StoredRun, runs: readonly StoredRun[]): boolean =>
  runs.some(({ run: other }) => other.isBorderline && other.userId === run.userId && other.section === run.section);
