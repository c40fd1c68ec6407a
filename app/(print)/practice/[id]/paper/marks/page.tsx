import type { Metadata } from "next";
import { MarksPaper } from "@/app/_paper/marks-paper";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { sheetViewOf } from "@/app/_server/sheet-view-of";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import { marksFacts } from "@/lib/printing";
import { describeJoint } from "@/lib/weld";

export const metadata: Metadata = { title: "Mark sheet to print" };

export default async function MarksPaperPage({ params }: PageProps<"/practice/[id]/paper/marks">) {
  const { id } = await params;
  const read = await readMarkSheet(await currentCaller(), id);
  if (!read.ok) return showRefusal(read);
  const { practice, truth } = read.sheet;
  const view = sheetViewOf(read.sheet);
  if (!practice.handedInAt) return showRefusal({ ok: false, code: "not-handed-in" });
  const facts = marksFacts({
    learner: read.learner,
    practiceId: id,
    joint: describeJoint(truth.joint),
    criteria: practice.criteria,
    handedInAt: practice.handedInAt,
    ruleVersion: view.sections[0].ruleVersion,
  });
  return <MarksPaper sheet={view} learner={read.learner.name} facts={facts} />;
}
