import type { Metadata } from "next";
import { PaperFrame } from "@/app/_paper/paper-frame";
import { PrintedBlocks } from "@/app/_paper/printed-blocks";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import { SECTION_WORDS } from "@/app/_ui/section-names";
import { reportPrint } from "@/lib/printing";
import { JOINT_OF } from "@/lib/results";
import { describeJoint } from "@/lib/weld";

export const metadata: Metadata = { title: "Report to print" };

export default async function ReportPaper({ params }: PageProps<"/practice/[id]/paper/report">) {
  const { id } = await params;
  const read = await readMarkSheet(await currentCaller(), id);
  if (!read.ok) return showRefusal(read);
  const { practice, truth, sections } = read.sheet;
  const { handedInAt, criteria, book } = practice;
  if (!handedInAt) return showRefusal({ ok: false, code: "not-handed-in" });
  const blocks = reportPrint({
    learner: read.learner,
    practiceId: id,
    kind: JOINT_OF[practice.section],
    joint: describeJoint(truth.joint),
    criteria: criteria && { name: criteria.name, edition: criteria.edition, isOpen: book === "open" },
    startedAt: practice.startedAt,
    handedInAt,
    report: practice.report,
    questions: sections.flatMap(({ result }) => result.questions?.lines ?? []),
  });
  return (
    <PaperFrame
      title="Report"
      of={`${read.learner.name}, ${SECTION_WORDS[practice.section]}`}
      back={{ href: `/practice/${id}/marks`, name: "Back to the mark sheet" }}
    >
      <PrintedBlocks blocks={blocks} />
    </PaperFrame>
  );
}
