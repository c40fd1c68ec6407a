import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { InspectionBench } from "@/app/_bench";
import { specimens } from "@/app/_server/generation";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { openBench } from "@/app/_server/use-cases/open-bench";
import { DEFAULT_PAPER, JOINT_OF } from "@/lib/results";
import { PreparingPiece } from "./preparing-piece";

export const metadata: Metadata = { title: "Bench" };

export default async function BenchPage({ params }: PageProps<"/practice/[id]">) {
  const { id } = await params;
  const opened = await openBench(await currentCaller(), id, specimens);
  if (!opened.ok) return showRefusal(opened);
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
  const { passMark, criteria, book, report, sequence } = practice;
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
      questionCount={criteria ? (run?.questionCount ?? DEFAULT_PAPER[practice.section].questions) : 0}
      questions={questions}
      mayAskReading={run?.aids.asksReading ?? true}
    />
  );
}
