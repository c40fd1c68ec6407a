import type { Metadata } from "next";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readPaper } from "@/app/_server/use-cases/read-paper";
import { Notice } from "@/app/_ui/notice";
import { PaperBuilder } from "../_builder/paper-builder";
import { BuilderPage } from "../builder-page";

export const metadata: Metadata = { title: "Paper" };

export default async function PaperPage({ params }: PageProps<"/desk/papers/[paper]">) {
  const read = await readPaper(await currentCaller(), (await params).paper);
  if (!read.ok) return showRefusal(read);
  const { id, current, updatedAt, archivedAt } = read.kept;
  const { number, paper, usedAt } = current;
  return (
    <BuilderPage
      title={paper.name}
      lead="It reads as your learners will read it; every number and every choice can be changed where it stands."
    >
      {archivedAt && (
        <div className="mt-4 max-w-3xl">
          <Notice isGood>This paper is put away: take it back on the list of papers before you change it.</Notice>
        </div>
      )}
      <PaperBuilder
        key={id}
        first={paper}
        firstKept={{ id, number, seen: updatedAt.toISOString() }}
        isUsed={usedAt !== null}
        criteria={read.criteria}
      />
    </BuilderPage>
  );
}
