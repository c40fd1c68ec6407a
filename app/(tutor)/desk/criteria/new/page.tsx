import type { Metadata } from "next";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readCriteriaSets } from "@/app/_server/use-cases/read-criteria-sets";
import { groupCriteria } from "@/lib/criteria";
import { NewSet } from "../_editor/new-set";

export const metadata: Metadata = { title: "New criteria" };

export default async function NewCriteriaPage() {
  const mayWrite = await readCriteriaSets(await currentCaller());
  if (!mayWrite.ok) return showRefusal(mayWrite);
  return <NewSet groups={groupCriteria([])} />;
}
