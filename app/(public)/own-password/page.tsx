import type { Metadata } from "next";
import { refuse } from "@/app/_server/refusal";
import { currentActor, goHome, showRefusal } from "@/app/_server/session";
import { Button } from "@/app/_ui/button";
import { PageFrame } from "@/app/_ui/page-frame";
import { signOut } from "@/app/(learner)/actions";
import { chooseOwn } from "./actions";
import { OwnPasswordForm } from "./own-password-form";

export const metadata: Metadata = { title: "Choose your own password" };

export default async function OwnPasswordPage() {
  const actor = await currentActor();
  if (!actor) return showRefusal(refuse("not-signed-in"));
  if (!actor.hasOneTimeCode) return goHome();
  return (
    <PageFrame
      title="Choose your own password"
      lead={`Welcome, ${actor.name}. The code you came in with works until you have a password of your own.`}
      isNarrow
    >
      <OwnPasswordForm choose={chooseOwn} />
      <form action={signOut} className="mt-4 flex flex-wrap items-center gap-3">
        <span className="wrap-anywhere">Not {actor.name}?</span>
        <Button type="submit" look="quiet">
          Sign out
        </Button>
      </form>
    </PageFrame>
  );
}
