import type { Metadata } from "next";
import Link from "next/link";
import { DRILL_WORDS, describeNext, lengthWords } from "@/app/_drills/drill-words";
import { RoundsTable } from "@/app/_drills/rounds-table";
import { BeginEye } from "@/app/_eye/begin-eye";
import { EyeRecord, LeftRound } from "@/app/_eye/eye-record";
import { SetForMe } from "@/app/_eye/set-for-me";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readDrills } from "@/app/_server/use-cases/read-drills";
import { readEyeDrills } from "@/app/_server/use-cases/read-eye-drills";
import { Caution } from "@/app/_ui/caution";
import { PageFrame } from "@/app/_ui/page-frame";
import { Sheet } from "@/app/_ui/sheet";
import { DRILLS } from "@/lib/drills";
import { beginRound } from "./actions";

export const metadata: Metadata = { title: "Drills" };

export default async function DrillsPage() {
  const read = await readDrills(await currentCaller());
  if (!read.ok) return showRefusal(read);
  const eye = await readEyeDrills(await currentCaller());
  if (!eye.ok) return showRefusal(eye);
  return (
    <PageFrame title="Drills" lead="Short exercises for the eye and with the gauges, each answer told at once.">
      <SetForMe drills={eye.set} begin={beginRound} className="mt-6 border-l-4 border-l-action" />
      <Sheet title="For the eye" className="mt-6">
        <p className="mt-1 text-ink-2">
          Windows on welds under your torch: spot, name, tell apart, find the ends, size. They come mostly from what you
          miss or mix up on your pieces, and change no marks.
        </p>
        {eye.unfinished && <LeftRound {...eye.unfinished} />}
        <BeginEye begin={beginRound} />
        <EyeRecord rounds={eye.rounds} />
      </Sheet>
      <h2 className="mt-8 font-semibold text-xl tracking-tight">With the gauges</h2>
      <p className="mt-1 max-w-3xl text-ink-2">{describeNext(read.rounds)}</p>
      <div className="mt-3 space-y-5">
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
