import type { Metadata } from "next";
import Link from "next/link";
import { HistoryOnPaper } from "@/app/_paper/history-on-paper";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readLearner } from "@/app/_server/use-cases/read-learner";
import { Caution } from "@/app/_ui/caution";
import { MarksHistory } from "@/app/_ui/marks-history";
import { PageFrame } from "@/app/_ui/page-frame";
import { SittingMarks } from "@/app/_ui/sitting-marks";
import { readWorkshop } from "@/prisma/stores/workshops";
import { giveAccess, signOutEverywhere } from "../actions";
import { describeLearner } from "../describe-desk";
import { Access } from "./access";
import { RecordSheet } from "./record-sheet";

export const metadata: Metadata = { title: "Learner" };

export default async function LearnerPage({ params }: PageProps<"/desk/[learner]">) {
  const { learner: id } = await params;
  const [read, workshop] = await Promise.all([readLearner(await currentCaller(), id), readWorkshop()]);
  if (!read.ok) return showRefusal(read);
  const { learner, openCount, handedIn, sat, erasureAskedAt } = read;
  return (
    <PageFrame title={learner.name} lead={describeLearner(learner.signInName, handedIn.length, openCount)}>
      <Link href="/desk" className="mt-3 inline-block rounded py-2 text-action underline underline-offset-4">
        Back to the desk
      </Link>
      <Link
        href={`/desk/${learner.id}/progress`}
        className="mt-3 ml-6 inline-block rounded py-2 text-action underline underline-offset-4"
      >
        Progress: found, overlooked, named, measured
      </Link>
      {handedIn.length + sat.length > 0 && <HistoryOnPaper personId={learner.id} />}
      {sat.length > 0 && <SittingMarks attempts={sat} sittings="/desk/sittings" />}
      {sat.length > 0 && handedIn.length > 0 && <h2 className="mt-8 font-semibold text-xl">Practice</h2>}
      {handedIn.length > 0 && <MarksHistory practices={handedIn} />}
      {handedIn.length === 0 && (
        <p className="mt-4 max-w-3xl">
          The marks of every practice piece come here as soon as it is handed in, with a chart and a link to its mark
          sheet.
        </p>
      )}
      <Access
        learner={learner}
        workshop={workshop?.name ?? ""}
        publicAddress={process.env.PUBLIC_URL ?? null}
        giveAccess={giveAccess}
        signOut={signOutEverywhere}
      />
      <RecordSheet learner={learner} askedAt={erasureAskedAt} />
      <Caution />
    </PageFrame>
  );
}
