import type { Metadata } from "next";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { beginPaper } from "@/app/_server/use-cases/begin-paper";
import { PaperBuilder } from "../_builder/paper-builder";

export const metadata: Metadata = { title: "New paper" };

export default async function NewPaperPage() {
  const begun = await beginPaper(await currentCaller());
  if (!begun.ok) return showRefusal(begun);
  return <PaperBuilder first={begun.paper} firstKept={null} isUsed={false} isAway={false} criteria={begun.criteria} />;
}
