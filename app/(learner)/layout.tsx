import type { ReactNode } from "react";
import { refuse } from "@/app/_server/refusal";
import { currentActor, showRefusal } from "@/app/_server/session";
import { SiteHeader } from "@/app/_ui/site-header";
import { readWorkshop } from "@/prisma/stores/workshops";
import { signOut } from "./actions";

export default async function LearnerLayout({ children }: { children: ReactNode }) {
  const [actor, workshop] = await Promise.all([currentActor(), readWorkshop()]);
  if (!actor || !workshop) return showRefusal(refuse("not-signed-in"));
  if (actor.hasOneTimeCode) return showRefusal(refuse("own-password-needed"));
  return (
    <>
      <SiteHeader actor={actor} workshop={workshop.name} signOut={signOut} />
      {children}
    </>
  );
}
