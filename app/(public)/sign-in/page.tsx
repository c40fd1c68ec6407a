import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { landingPath } from "@/app/_server/landing";
import { currentActor, goHome } from "@/app/_server/session";
import { PageFrame } from "@/app/_ui/page-frame";
import { readWorkshop } from "@/prisma/stores/workshops";
import { signIn } from "./actions";
import { SignInForm } from "./sign-in-form";

export const metadata: Metadata = { title: "Sign in" };

export default async function SignInPage({ searchParams }: PageProps<"/sign-in">) {
  const { to } = await searchParams;
  if (await currentActor()) return goHome(to);
  const workshop = await readWorkshop();
  if (!workshop) redirect("/setup");
  return (
    <PageFrame
      title={workshop.name}
      lead={landingPath(to) ? "Sign in to get to the page you came for." : "Sign in to get to your bench."}
      isNarrow
    >
      <SignInForm signIn={signIn} landing={landingPath(to)} canJoin={workshop.allowsOwnAccounts} />
    </PageFrame>
  );
}
