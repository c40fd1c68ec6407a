import type { Metadata } from "next";
import Link from "next/link";
import { DRILL_WORDS, describeNext, lengthWords } from "@/app/_drills/drill-words";
import { RoundsTable } from "@/app/_drills/rounds-table";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readDrills } from "@/app/_server/use-cases/read-drills";
import { Caution } from "@/app/_ui/caution";
import { PageFrame } from "@/app/_ui/page-frame";
import { Sheet } from "@/app/_ui/sheet";
import { DRILLS } from "@/lib/drills";

export const metadata: Metadata = { title: "Gauge drills" };

export default async function DrillsPage() {
  const read = await readDrills(await currentCaller());
  if (!read.ok) return showRefusal(read);
  return (
    <PageFrame title="Gauge drills" lead={describeNext(read.rounds)}>
      <div className="mt-6 space-y-5">
        {DRILLS.map((drill) => (
          <Sheet key={drill} title={DRILL_WORDS[drill].title}>
            <div className="mt-2 grid items-start gap-x-8 gap-y-4 lg:grid-cols-[22rem_minmax(0,1fr)]">
              <div>
                <p className="text-ink-2">{DRILL_WORDS[drill].does}</p>
                <Link
                  href={`/drills/${drill}`}
                  aria-label={`Begin: ${DRILL_WORDS[drill].title}`}
                  className="mt-3 inline-flex min-h-11 items-center rounded bg-action px-5 font-medium text-white hover:bg-action-2"
                >
                  Begin
                </Link>
                <span className="ml-3 text-ink-2 text-sm">{lengthWords(drill)}</span>
              </div>
              <RoundsTable drill={drill} rounds={read.rounds[drill]} />
            </div>
          </Sheet>
        ))}
      </div>
      <Caution />
    </PageFrame>
  );
}
