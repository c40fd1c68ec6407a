import type { Metadata } from "next";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readDesk } from "@/app/_server/use-cases/read-desk";
import { Caution } from "@/app/_ui/caution";
import { PageFrame } from "@/app/_ui/page-frame";
import { Sheet } from "@/app/_ui/sheet";
import { add, changeSettings, renew } from "./actions";
import { AddLearner } from "./add-learner";
import { describeDesk } from "./describe-desk";
import { LearnersTable } from "./learners-table";
import { SettingsForm } from "./settings-form";

export const metadata: Metadata = { title: "Desk" };

export default async function DeskPage() {
  const desk = await readDesk(await currentCaller());
  if (!desk.ok) return showRefusal(desk);
  const { settings, learners } = desk;
  return (
    <PageFrame title={settings.name} lead={describeDesk(learners)}>
      <Sheet title="Learners" className="mt-6">
        <LearnersTable learners={learners} renew={renew} />
      </Sheet>
      <div className="mt-5 grid items-start gap-5 lg:grid-cols-2">
        <AddLearner add={add} />
        <Sheet title="Workshop">
          <SettingsForm settings={settings} change={changeSettings} />
        </Sheet>
      </div>
      <Caution />
    </PageFrame>
  );
}
