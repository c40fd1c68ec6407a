import type { Metadata } from "next";
import { refuse } from "@/app/_server/refusal";
import { currentActor, showRefusal } from "@/app/_server/session";
import { PageFrame } from "@/app/_ui/page-frame";
import { changePassword } from "./actions";
import { PasswordForm } from "./password-form";

export const metadata: Metadata = { title: "Your account" };

export default async function AccountPage() {
  const actor = await currentActor();
  if (!actor) return showRefusal(refuse("not-signed-in"));
  return (
    <PageFrame title={actor.name} lead={`You are a ${actor.role} in this workshop.`} isNarrow>
      <PasswordForm change={changePassword} />
    </PageFrame>
  );
}
