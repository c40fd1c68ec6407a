import type { Metadata } from "next";
import Link from "next/link";
import { SectionVerdict } from "@/app/_marks/section-verdict";
import { PieceOnPaper } from "@/app/_paper/piece-on-paper";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readReview } from "@/app/_server/use-cases/read-review";
import { Caution } from "@/app/_ui/caution";
import { LocalTime } from "@/app/_ui/local-time";
import { PageFrame } from "@/app/_ui/page-frame";
import { SECTION_WORDS } from "@/app/_ui/section-names";
import { RULE_VERSION } from "@/lib/results";
import { ReviewDesk } from "./review-desk";

export const metadata: Metadata = { title: "Mark sheet of a sitting" };

export default async function ReviewPage({ params }: PageProps<"/desk/sittings/[id]/marks/[runId]">) {
  const { id, runId } = await params;
  const read = await readReview(await currentCaller(), runId);
  if (!read.ok) return showRefusal(read);
  const { sheet, learnerName, section, isBorderline, closedAt, paperName, className, isKnown, later } = read;
  return (
    <PageFrame
      isWide
      title={`Mark sheet of ${learnerName}`}
      lead={
        <>
          {paperName}, {className}: {SECTION_WORDS[section]}
          {isBorderline ? ", second piece" : ""}, closed <LocalTime at={closedAt} />.{" "}
          {isKnown
            ? "The learner may read these marks: what you change is seen at once."
            : "The marks are not released: the learner sees nothing yet."}
        </>
      }
    >
      <div className="mt-2 flex flex-wrap items-center gap-x-4 gap-y-2">
        <Link
          href={`/desk/sittings/${id}`}
          className="inline-block rounded py-2 text-action underline underline-offset-4"
        >
          Back to the sitting
        </Link>
        <PieceOnPaper id={read.practiceId} />
      </div>
      <div className="mt-4 grid gap-4 md:grid-cols-2">
        {sheet.sections.map((result) => (
          <SectionVerdict key={result.section} result={result} review={sheet.review} />
        ))}
        <div className="rounded-md border border-line bg-sheet p-4 text-sm">
          <p>
            Overrule any line of the account, or annul a question for everybody who was asked it. The computed mark
            stays beside yours; the learner reads your name, the date and the reason. Everything can be taken back.
          </p>
          {later.map(({ sittingId, plannedAt, isToCome }) => (
            <p key={sittingId} className="mt-2">
              {isToCome ? "This section is planned to be sat again on " : "This section was sat again on "}
              <LocalTime at={plannedAt} /> (
              <Link href={`/desk/sittings/${sittingId}`} className="text-action underline underline-offset-4">
                that sitting
              </Link>
              ). Nothing of it is lost: if this mark passes after all, {isToCome ? "it would count" : "it counts"} as
              sat once more and changes nothing; if this mark fails after all, it is the re-sit.
              {isToCome && " Make it void on its board if it is not to be sat."}
            </p>
          ))}
        </div>
      </div>
      <ReviewDesk runId={runId} sheet={sheet} olderRule={read.olderRule} presentRule={RULE_VERSION} />
      <Caution />
    </PageFrame>
  );
}
