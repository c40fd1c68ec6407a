import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import { sentenceFor } from "@/app/_server/messages";
import { currentActor, goHome } from "@/app/_server/session";
import { Notice } from "@/app/_ui/notice";
import { PageFrame } from "@/app/_ui/page-frame";
import { readWorkshop } from "@/prisma/stores/workshops";
import { join } from "./actions";
import { JoinForm } from "./join-form";

export const metadata: Metadata = { title: "Make an account" };

export default async function JoinPage() {
  if (await currentActor()) return goHome();
  const workshop = await readWorkshop();
  if (!workshop) redirect("/setup");
  return (
    <PageFrame
      title={`Join ${workshop.name}`}
      lead="An account keeps your plates, reports and marks together."
      isNarrow
    >
      <div className="mt-6">
        {workshop.allowsOwnAccounts ? <JoinForm join={join} /> : <Notice>{sentenceFor("own-accounts-off")}</Notice>}
      </div>
      <p className="mt-4">
        Have one already?{" "}
        <Link href="/sign-in" className="font-medium text-action underline underline-offset-4">
          Sign in
        </Link>
      </p>
    </PageFrame>
  );
}
