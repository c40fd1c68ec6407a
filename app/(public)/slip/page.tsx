import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { currentActor } from "@/app/_server/session";
import { PageFrame } from "@/app/_ui/page-frame";
import { readWorkshop } from "@/prisma/stores/workshops";
import { signInWithSlip } from "./actions";
import { SlipForm } from "./slip-form";

export const metadata: Metadata = { title: "Sign in with a slip" };

export default async function SlipPage() {
  const [workshop, actor] = await Promise.all([readWorkshop(), currentActor()]);
  if (!workshop) redirect("/setup");
  return (
    <PageFrame
      title={workshop.name}
      lead="Your slip signs you in this once. Right after, you choose a password of your own."
      isNarrow
    >
      <SlipForm signIn={signInWithSlip} signedInAs={actor?.name ?? null} />
    </PageFrame>
  );
}
