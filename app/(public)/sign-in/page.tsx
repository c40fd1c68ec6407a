import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { currentActor, goHome } from "@/app/_server/session";
import { PageFrame } from "@/app/_ui/page-frame";
import { readWorkshop } from "@/prisma/stores/workshops";
import { signIn } from "./actions";
import { SignInForm } from "./sign-in-form";

export const metadata: Metadata = { title: "Sign in" };

export default async function SignInPage() {
  if (await currentActor()) return goHome();
  const workshop = await readWorkshop();
  if (!workshop) redirect("/setup");
  return (
    <PageFrame title={workshop.name} lead="Sign in to get to your bench." isNarrow>
      <SignInForm signIn={signIn} canJoin={workshop.allowsOwnAccounts} />
    </PageFrame>
  );
}
