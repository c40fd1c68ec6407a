import type { Metadata } from "next";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readOwnCriteria } from "@/app/_server/use-cases/read-criteria-sets";
import { Notice } from "@/app/_ui/notice";
import { draftOf } from "../_editor/draft";
import { SetEditor } from "../_editor/set-editor";

export const metadata: Metadata = { title: "Criteria" };

export default async function CriteriaSetPage({ params }: PageProps<"/desk/criteria/[set]">) {
  const read = await readOwnCriteria(await currentCaller(), (await params).set);
  if (!read.ok) return showRefusal(read);
  const { id, own, basedOn, updatedAt, archivedAt } = read.set;
  const notice = archivedAt && (
    <div className="mt-4 max-w-3xl">
      <Notice isGood>This set is put away: nobody can choose it until you take it back on the list of sets.</Notice>
    </div>
  );
  return (
    <SetEditor
      key={id}
      first={draftOf(own, basedOn)}
      firstKept={{ id, seen: updatedAt.toISOString() }}
      notice={notice}
    />
  );
}
