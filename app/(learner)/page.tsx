import type { Metadata } from "next";
import Link from "next/link";
import { SetForMe } from "@/app/_eye/set-for-me";
import { specimens } from "@/app/_server/generation";
import { keepFirstReady, keepNextReady } from "@/app/_server/next/keep-next-ready";
import { currentActor, currentCaller, showRefusal } from "@/app/_server/session";
import { listOwnSittings } from "@/app/_server/use-cases/list-own-sittings";
import { readEyeDrills } from "@/app/_server/use-cases/read-eye-drills";
import { readToday } from "@/app/_server/use-cases/read-today";
import { Caution } from "@/app/_ui/caution";
import { PageFrame } from "@/app/_ui/page-frame";
import { Sheet } from "@/app/_ui/sheet";
import type { ListedPractice } from "@/lib/practice";
import { takeFreshPiece } from "./actions";
import { beginRound } from "./drills/actions";
import { DrillsSheet } from "./drills-sheet";
import { FreshPiece } from "./fresh-piece";
import { LastMarks } from "./last-marks";
import { aimWords } from "./next-words";
import { OpenPiece } from "./open-piece";
import { SittingsNow, SittingsSheet } from "./sittings-today";
import { describeStanding } from "./standing";
import { UnfinishedPieces } from "./unfinished-pieces";

export const metadata: Metadata = { title: "Today" };

const LAST_SHOWN = 3;

export default async function TodayPage() {
  const actor = await currentActor();
  const today = await readToday(await currentCaller());
  if (!actor || !today.ok) return showRefusal(today.ok ? { ok: false, code: "not-signed-in" } : today);
  const own = await listOwnSittings(await currentCaller());
  const sittings = own.ok ? own.sittings : [];
  const eye = await readEyeDrills(await currentCaller());
  const { open, handedIn, passMarks, criteria, canStart, next } = today;
  const isNew = handedIn.length === 0 && next.chosen.length === 0;
  if (next.notChosen === null) (isNew ? keepFirstReady : keepNextReady)(actor.id, specimens, () => new Date());
  const [current, ...others] = open.toSorted((a, b) => lastTouched(b) - lastTouched(a));
  return (
    <PageFrame title={`Good to see you, ${actor.name.split(" ")[0]}`} lead={describeStanding(handedIn, open.length)}>
      {actor.role === "tutor" && (
        <p className="mt-2 max-w-3xl text-ink-2">
          This is your own practice, as a learner has it. Your learners and their marks are on the{" "}
          <Link href="/desk" className="font-medium text-action underline underline-offset-4">
            desk
          </Link>
          .
        </p>
      )}
      <SittingsNow sittings={sittings} />
      {eye.ok && <SetForMe drills={eye.set} begin={beginRound} className="mt-6 border-l-4 border-l-action" />}
      <div className="mt-6 grid items-start gap-5 lg:grid-cols-2">
        {current && <OpenPiece practice={current} />}
        <FreshPiece
          take={takeFreshPiece}
          passMarks={passMarks}
          criteria={criteria}
          canStart={canStart}
          chosen={next.chosen}
          notChosen={next.notChosen}
          hasPlate={open.some(({ section }) => section === "plate")}
          why={aimWords(next.aims)}
          isSecond={Boolean(current)}
        />
        {!current && (
          <div className="space-y-5">
            <Sheet title="Unfinished">
              <p className="mt-2 text-ink-2">
                A piece that you leave before handing it in waits here, with every line you wrote.
              </p>
            </Sheet>
            <DrillsSheet />
          </div>
        )}
      </div>
      {others.length > 0 && (
        <Sheet title="Unfinished besides" className="mt-5">
          <UnfinishedPieces practices={others} />
        </Sheet>
      )}
      {current && <DrillsSheet className="mt-5" />}
      <SittingsSheet sittings={sittings} />
      <Sheet title="Last marks" className="mt-5">
        <LastMarks practices={handedIn.slice(0, LAST_SHOWN)} />
        {handedIn.length > LAST_SHOWN && (
          <Link href="/history" className="mt-4 inline-block font-medium text-action underline underline-offset-4">
            All {handedIn.length} pieces
          </Link>
        )}
      </Sheet>
      <Caution />
    </PageFrame>
  );
}

const lastTouched = ({ startedAt, savedAt }: ListedPractice) => Number(savedAt ?? startedAt);
