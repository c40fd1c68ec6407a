import type { Metadata } from "next";
import Link from "next/link";
import { HistoryOnPaper } from "@/app/_paper/history-on-paper";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { listOwnAttempts } from "@/app/_server/use-cases/list-own-attempts";
import { listOwnPractices } from "@/app/_server/use-cases/list-own-practices";
import { Caution } from "@/app/_ui/caution";
import { MarksHistory } from "@/app/_ui/marks-history";
import { PageFrame } from "@/app/_ui/page-frame";
import { SittingMarks } from "@/app/_ui/sitting-marks";

export const metadata: Metadata = { title: "Marks" };

export default async function HistoryPage() {
  const practices = await listOwnPractices(await currentCaller());
  if (!practices.ok) return showRefusal(practices);
  const sat = await listOwnAttempts(await currentCaller());
  const attempts = sat.ok ? sat.attempts : [];
  const { open, handedIn } = practices;
  return (
    <PageFrame title="Your marks" lead="Each piece stands on its own, against the marks it needed that day.">
      {attempts.length + handedIn.length > 0 && (
        <>
          <p className="mt-2 hidden print:block">Learner: {practices.person.name}</p>
          <HistoryOnPaper personId={practices.person.id} />
        </>
      )}
      {attempts.length > 0 && <SittingMarks attempts={attempts} sittings="/sitting" />}
      {attempts.length > 0 && handedIn.length > 0 && <h2 className="mt-8 font-semibold text-xl">Practice</h2>}
      {handedIn.length === 0 ? (
        <p className="mt-6">
          Every piece you practise on gets a line here once it is handed in.{" "}
          <Link href="/" className="font-medium text-action underline underline-offset-4">
            {open.length === 0 ? "Take one from Today to begin" : "Go on with the one on your bench"}
          </Link>
        </p>
      ) : (
        <MarksHistory practices={handedIn} />
      )}
      <Caution />
    </PageFrame>
  );
}
