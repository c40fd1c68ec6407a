import type { ReactNode } from "react";
import { refuse } from "@/app/_server/refusal";
import { currentActor, showRefusal } from "@/app/_server/session";

/** Prints stand alone: no bar of pages over them. */
export default async function PrintLayout({ children }: { children: ReactNode }) {
  if (!(await currentActor())) return showRefusal(refuse("not-signed-in"));
  return children;
}
