import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import { MarkSheet } from "@/app/_marks/mark-sheet";
import { OtherStandards } from "@/app/_marks/other-standards";
import { ReviewSummary } from "@/app/_marks/review-summary";
import { SectionVerdict } from "@/app/_marks/section-verdict";
import { summaryWords } from "@/app/_marks/summary-words";
import { TrailOfPiece } from "@/app/_marks/trail/trail-context";
import { WhyThisPiece } from "@/app/_marks/why-this-piece";
import { PieceOnPaper } from "@/app/_paper/piece-on-paper";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { sheetViewOf } from "@/app/_server/sheet-view-of";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import { Caution } from "@/app/_ui/caution";
import { LocalTime } from "@/app/_ui/local-time";
import { PageFrame } from "@/app/_ui/page-frame";
import { SECTION_WORDS } from "@/app/_ui/section-names";
import { describeJoint } from "@/lib/weld";

export const metadata: Metadata = { title: "Mark sheet" };

export default async function MarkSheetPage({ params }: PageProps<"/practice/[id]/marks">) {
  const { id } = await params;
  const read = await readMarkSheet(await currentCaller(), id);
  if (!read.ok) {
    // the page of the sitting says when they come
    if ("sittingId" in read) redirect(`/sitting/${read.sittingId}`);
    return showRefusal(read);
  }
  const { sheet, learner, isOwn, sittingId, trail, reason } = read;
  const { runId } = sheet.practice;
  const view = sheetViewOf(sheet);
  const [well, dearest, practise] = summaryWords(view);
  const ownNext = sittingId ? ["Back to the sitting", `/sitting/${sittingId}`] : ["On to the next piece", "/"];
  const [nextWords, nextPath] = isOwn ? ownNext : [`Back to ${learner.name}`, `/desk/${learner.id}`];
  return (
    <PageFrame
      isWide
      title="Mark sheet"
      lead={
        <>
          {isOwn ? <span className="print:hidden">Your report</span> : `The report of ${learner.name}`}
          {isOwn && <span className="hidden print:inline">The report of {learner.name}</span>} on a{" "}
          {SECTION_WORDS[sheet.practice.section]}
          {sittingId ? " in a sitting" : ""}, {sittingId ? "closed" : "handed in"}{" "}
          {sheet.practice.handedInAt && <LocalTime at={sheet.practice.handedInAt} />}.{" "}
          {describeJoint(sheet.truth.joint)}.
        </>
      }
    >
      <div className="mt-4 grid gap-4 md:grid-cols-2">
        {view.sections.map((result) => (
          <SectionVerdict key={result.section} result={result} review={view.review} />
        ))}
      </div>
      <div className="mt-4 flex flex-wrap items-end justify-between gap-4">
        <ul className="max-w-3xl space-y-1">
          {!isOwn && <li className="text-ink-2 print:hidden">As {learner.name} reads it:</li>}
          <li>{well}</li>
          <li>{dearest}</li>
          <li>{practise}</li>
          {reason && (
            <li className="print:hidden">
              <WhyThisPiece reason={reason} sheet={view} isOwn={isOwn} />
            </li>
          )}
        </ul>
        <nav aria-label="Next" className="print:hidden flex flex-wrap gap-3">
          <Link
            href={nextPath}
            className="inline-flex min-h-11 items-center rounded bg-action px-5 font-medium text-white hover:bg-action-2"
          >
            {nextWords}
          </Link>
          <Link
            href="/rule"
            className="inline-flex min-h-11 items-center rounded border border-ink-2 bg-sheet px-5 font-medium hover:bg-paper-2"
          >
            How marks are given
          </Link>
          {!isOwn && runId && (
            <Link
              href={`/desk/sittings/${sittingId}/marks/${runId}`}
              className="inline-flex min-h-11 items-center rounded border border-ink-2 bg-sheet px-5 font-medium hover:bg-paper-2"
            >
              Review the marks
            </Link>
          )}
          <PieceOnPaper id={id} />
        </nav>
      </div>
      {view.review && <ReviewSummary review={view.review} />}
      <TrailOfPiece trail={trail}>
        <MarkSheet sheet={view} />
      </TrailOfPiece>
      <OtherStandards sheet={view} />
      <Caution />
    </PageFrame>
  );
}
