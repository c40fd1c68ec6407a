import type { Metadata } from "next";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { listOwnPractices } from "@/app/_server/use-cases/list-own-practices";
import { Caution } from "@/app/_ui/caution";
import { MarksChart } from "@/app/_ui/marks-chart";
import { MarksTable } from "@/app/_ui/marks-table";
import { PageFrame } from "@/app/_ui/page-frame";
import { Sheet } from "@/app/_ui/sheet";
import { FACES } from "@/lib/weld";

export const metadata: Metadata = { title: "Marks" };

export default async function HistoryPage() {
  const practices = await listOwnPractices(await currentCaller());
  if (!practices.ok) return showRefusal(practices);
  const { handedIn } = practices;
  return (
    <PageFrame title="Your marks" lead="Each face stands on its own, against the marks it needed that day.">
      {handedIn.length === 0 ? (
        <p className="mt-6">Every plate you hand in gets a line here. Take one from Today to begin.</p>
      ) : (
        <>
          <div className="mt-6 grid gap-5 lg:grid-cols-2">
            {FACES.map((face) => (
              <MarksChart key={face} section={face} practices={handedIn} />
            ))}
          </div>
          <Sheet title="Plate by plate" className="mt-5">
            <MarksTable practices={handedIn} />
          </Sheet>
        </>
      )}
      <Caution />
    </PageFrame>
  );
}
