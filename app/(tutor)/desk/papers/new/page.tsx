import type { Metadata } from "next";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { beginPaper } from "@/app/_server/use-cases/begin-paper";
import { PaperBuilder } from "../_builder/paper-builder";
import { BuilderPage } from "../builder-page";

export const metadata: Metadata = { title: "New paper" };

export default async function NewPaperPage() {
  const begun = await beginPaper(await currentCaller());
  if (!begun.ok) return showRefusal(begun);
  return (
    <BuilderPage
      title="New paper"
      lead="It reads as your learners will read it. Change what is different in your workshop, then save it."
    >
      <PaperBuilder first={begun.paper} firstKept={null} isUsed={false} criteria={begun.criteria} />
    </BuilderPage>
  );
}
