import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import { currentActor, goHome } from "@/app/_server/session";
import { Notice } from "@/app/_ui/notice";
import { PageFrame } from "@/app/_ui/page-frame";
import { readWorkshop } from "@/prisma/stores/workshops";
import { enterClass, join } from "./actions";
import { EnterClassForm } from "./enter-class-form";
import { JoinForm } from "./join-form";

export const metadata: Metadata = { title: "Join" };

export default async function JoinPage() {
  const actor = await currentActor();
  if (actor && (actor.role === "tutor" || actor.hasOneTimeCode)) return goHome();
  const workshop = await readWorkshop();
  if (!workshop) redirect("/setup");
  if (actor) {
    return (
      <PageFrame
        title="Join a class"
        lead={`You are signed in as ${actor.name}. Your pieces, reports and marks come with you.`}
        isNarrow
      >
        <EnterClassForm enter={enterClass} />
      </PageFrame>
    );
  }
  return (
    <PageFrame
      title={`Join ${workshop.name}`}
      lead="An account keeps your plates, reports and marks together."
      isNarrow
    >
      <div className="mt-6 space-y-4">
        {!workshop.allowsOwnAccounts && (
          <Notice isGood>
            The tutor makes the accounts in this workshop. With the join code of a class you make your own; without one,
            ask your tutor.
          </Notice>
        )}
        <JoinForm join={join} needsCode={!workshop.allowsOwnAccounts} />
      </div>
      <p className="mt-4">
        Have one already?{" "}
        <Link href="/sign-in" className="font-medium text-action underline underline-offset-4">
          Sign in
        </Link>{" "}
        and join the class from your account.
      </p>
    </PageFrame>
  );
}
