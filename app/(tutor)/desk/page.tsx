import type { Metadata } from "next";
import Link from "next/link";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readDesk } from "@/app/_server/use-cases/read-desk";
import { Caution } from "@/app/_ui/caution";
import { PageFrame } from "@/app/_ui/page-frame";
import { Sheet } from "@/app/_ui/sheet";
import { AccessDesk } from "./access-desk";
import { changeSettings, giveAccess } from "./actions";
import { describeDesk } from "./describe-desk";
import { SettingsForm } from "./settings-form";

export const metadata: Metadata = { title: "Desk" };

export default async function DeskPage() {
  const desk = await readDesk(await currentCaller());
  if (!desk.ok) return showRefusal(desk);
  const { settings, learners } = desk;
  return (
    <PageFrame title={settings.name} lead={describeDesk(learners)}>
      <Link
        href="/desk/criteria"
        className="mt-3 inline-flex min-h-11 items-center text-action underline underline-offset-4"
      >
        Criteria of your own: in-house limits
      </Link>
      <AccessDesk learners={learners} giveAccess={giveAccess}>
        <Sheet title="Workshop">
          <SettingsForm settings={settings} change={changeSettings} />
        </Sheet>
      </AccessDesk>
      <Caution />
    </PageFrame>
  );
}
