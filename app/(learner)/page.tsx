import type { Metadata } from "next";
import Link from "next/link";
import { currentActor, currentCaller, showRefusal } from "@/app/_server/session";
import { readToday } from "@/app/_server/use-cases/read-today";
import { Caution } from "@/app/_ui/caution";
import { PageFrame } from "@/app/_ui/page-frame";
import { Sheet } from "@/app/_ui/sheet";
import { takeFreshPlate } from "./actions";
import { FreshPlate } from "./fresh-plate";
import { LastMarks } from "./last-marks";
import { describeStanding } from "./standing";
import { UnfinishedPlates } from "./unfinished-plates";

export const metadata: Metadata = { title: "Today" };

const LAST_SHOWN = 3;

export default async function TodayPage() {
  const actor = await currentActor();
  const today = await readToday(await currentCaller());
  if (!actor || !today.ok) return showRefusal(today.ok ? { ok: false, code: "not-signed-in" } : today);
  const { open, handedIn, passMarks, canStart } = today;
  return (
    <PageFrame title={`Good to see you, ${actor.name.split(" ")[0]}`} lead={describeStanding(handedIn)}>
      <div className="mt-6 grid items-start gap-5 lg:grid-cols-2">
        <FreshPlate take={takeFreshPlate} passMarks={passMarks} canStart={canStart} />
        <Sheet title="Unfinished">
          <UnfinishedPlates practices={open} />
        </Sheet>
      </div>
      <Sheet title="Last marks" className="mt-5">
        <LastMarks practices={handedIn.slice(0, LAST_SHOWN)} />
        {handedIn.length > LAST_SHOWN && (
          <Link href="/history" className="mt-4 inline-block font-medium text-action underline underline-offset-4">
            All {handedIn.length} plates
          </Link>
        )}
      </Sheet>
      <Caution />
    </PageFrame>
  );
}
