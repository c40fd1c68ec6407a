import type { Metadata } from "next";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readDemoHistory } from "@/app/_server/use-cases/read-demo-history";
import { readDesk } from "@/app/_server/use-cases/read-desk";
import { readSittingsDesk } from "@/app/_server/use-cases/read-sittings-desk";
import { Caution } from "@/app/_ui/caution";
import { PageFrame } from "@/app/_ui/page-frame";
import { Sheet } from "@/app/_ui/sheet";
import { AccessDesk } from "./access-desk";
import { changeSettings, giveAccess } from "./actions";
import { DemoNotice } from "./demo-notice";
import { describeClasses, describeDesk } from "./describe-desk";
import { DeskLinks } from "./desk-links";
import { NeedsMe } from "./needs-me";
import { SettingsForm } from "./settings-form";
import { describeSittings } from "./sittings/describe-sittings";
import { WhatClassesMiss } from "./what-classes-miss";

export const metadata: Metadata = { title: "Desk" };

export default async function DeskPage() {
  const caller = await currentCaller();
  const [desk, sittings, demo] = await Promise.all([
    readDesk(caller),
    readSittingsDesk(caller),
    readDemoHistory(caller),
  ]);
  if (!desk.ok) return showRefusal(desk);
  if (!sittings.ok) return showRefusal(sittings);
  const { settings, classes, tutors, learners, withoutClass } = desk;
  const publicAddress = process.env.PUBLIC_URL ?? null;
  return (
    <PageFrame title={settings.name} lead={describeDesk(learners)}>
      {demo.ok && demo.writing && <DemoNotice {...demo.writing} />}
      <NeedsMe sittings={sittings.sittings} dues={sittings.dues} erasureRequests={desk.erasureRequests} />
      <DeskLinks
        links={[
          { href: "/desk/sittings", title: "Sittings", text: describeSittings(sittings.sittings) },
          { href: "/desk/classes", title: "Classes", text: describeClasses(classes) },
          { href: "/desk/papers", title: "Papers", text: "What a sitting is made of: sections, times, pass marks." },
          { href: "/desk/criteria", title: "Criteria", text: "Criteria of your own: in-house limits." },
          {
            href: "/desk/difficulty",
            title: "How hard it is to see",
            text: "What practice shows of each imperfection by size.",
          },
          {
            href: "/desk/records",
            title: "Records",
            text: "What the whole workshop found, statements sent elsewhere, and who asked to be erased.",
          },
        ]}
      />
      <WhatClassesMiss classes={classes} />
      <AccessDesk
        learners={withoutClass}
        tutors={tutors}
        workshop={settings.name}
        publicAddress={publicAddress}
        giveAccess={giveAccess}
      >
        <Sheet title="Workshop">
          <SettingsForm settings={settings} change={changeSettings} />
        </Sheet>
      </AccessDesk>
      <Caution />
    </PageFrame>
  );
}
