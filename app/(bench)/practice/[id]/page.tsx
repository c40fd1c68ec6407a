import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { InspectionBench, type SatRun } from "@/app/_bench";
import { specimens } from "@/app/_server/generation";
import { currentCaller, showRefusal } from "@/app/_server/session";
import type { BenchRun } from "@/app/_server/sitting-views";
import { openBench } from "@/app/_server/use-cases/open-bench";
import { DEFAULT_PAPER, JOINT_OF } from "@/lib/results";
import { PreparingPiece } from "./preparing-piece";

export const metadata: Metadata = { title: "Bench" };

export default async function BenchPage({ params }: PageProps<"/practice/[id]">) {
  const { id } = await params;
  const opened = await openBench(await currentCaller(), id, specimens);
  if (!opened.ok) {
    // a section that is not started, or takes nothing any more
    if ("sittingId" in opened) redirect(`/sitting/${opened.sittingId}`);
    return showRefusal(opened);
  }
  const { practice, plate, joint, questions, run } = opened;
  if (practice.state === "handed-in") redirect(`/practice/${id}/marks`);
  if (!joint)
    return (
      <PreparingPiece
        id={id}
        kind={JOINT_OF[practice.section]}
        stage={plate.stage}
        hasFailed={plate.state === "failed"}
      />
    );
  const { passMark, criteria, book, report, sequence, windowId, savedAt } = practice;
  // with a closed book the table stays on the server
  const known = criteria && {
    name: criteria.name,
    edition: criteria.edition,
    table: book === "open" ? criteria : null,
  };
  return (
    <InspectionBench
      id={id}
      joint={joint}
      passMark={passMark}
      criteria={known}
      report={report}
      sequence={sequence}
      savedBy={windowId}
      savedAt={savedAt?.toISOString() ?? null}
      sat={run && satRun(run)}
      questionCount={criteria ? (run?.questionCount ?? DEFAULT_PAPER[practice.section].questions) : 0}
      questions={questions}
      mayAskReading={run?.aids.asksReading ?? true}
      {...(run && { leaveUrl: `/sitting/${run.sittingId}`, marksUrl: `/sitting/${run.sittingId}` })}
    />
  );
}

/** What the bench follows of a section of a sitting. */
function satRun({ now, aids, questionCount: _, ...run }: BenchRun): SatRun {
  const { savedAt, closedAt } = run;
  return {
    now: now.getTime(),
    hasLens: aids.lens,
    run: { ...run, savedAt: savedAt?.toISOString() ?? null, closedAt: closedAt?.toISOString() ?? null },
  };
}
