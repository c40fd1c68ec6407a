import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { InspectionBench } from "@/app/_bench";
import { specimens } from "@/app/_server/generation";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { followProgress, readPlateFacts } from "@/app/_server/use-cases/follow-progress";
import { FACES } from "@/lib/weld";
import { PreparingPlate } from "./preparing-plate";

export const metadata: Metadata = { title: "Bench" };

export default async function BenchPage({ params }: PageProps<"/practice/[id]">) {
  const { id } = await params;
  const caller = await currentCaller();
  const followed = await followProgress(caller, id, specimens);
  if (!followed.ok) return showRefusal(followed);
  const { practice, plate } = followed;
  if (practice.state === "handed-in") redirect(`/practice/${id}/marks`);
  if (plate.state !== "made") {
    return <PreparingPlate id={id} stage={plate.stage} hasFailed={plate.state === "failed"} />;
  }
  const facts = await readPlateFacts(caller, id);
  if (!facts.ok) return showRefusal(facts);
  if (!facts.joint) return <PreparingPlate id={id} stage={plate.stage} hasFailed={false} />;
  const { passMarks, report, sequence } = practice;
  return (
    <InspectionBench
      id={id}
      joint={facts.joint}
      passMarks={passMarks}
      report={report}
      sequence={sequence}
      faces={FACES}
    />
  );
}
