import type { Metadata } from "next";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readCriteriaSets } from "@/app/_server/use-cases/read-criteria-sets";
import { groupCriteria } from "@/lib/criteria";
import { NewSet } from "../_editor/new-set";
import { CriteriaPage } from "../criteria-page";

export const metadata: Metadata = { title: "New criteria" };

export default async function NewCriteriaPage() {
  const mayWrite = await readCriteriaSets(await currentCaller());
  if (!mayWrite.ok) return showRefusal(mayWrite);
  return (
    <CriteriaPage
      title="New criteria of your own"
      lead="Say what the set builds on, write how your workshop differs, and try each row before you store it."
    >
      <NewSet groups={groupCriteria([])} />
    </CriteriaPage>
  );
}
