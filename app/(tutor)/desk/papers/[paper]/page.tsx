import type { Metadata } from "next";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readPaper } from "@/app/_server/use-cases/read-paper";
import { PaperBuilder } from "../_builder/paper-builder";

export const metadata: Metadata = { title: "Paper" };

export default async function PaperPage({ params, searchParams }: PageProps<"/desk/papers/[paper]">) {
  const [{ paper: asked }, { from }] = await Promise.all([params, searchParams]);
  const read = await readPaper(await currentCaller(), asked);
  if (!read.ok) return showRefusal(read);
  const { id, current, updatedAt, archivedAt } = read.kept;
  const { number, paper, usedAt } = current;
  return (
    <PaperBuilder
      key={id}
      first={paper}
      firstKept={{ id, number, seen: updatedAt.toISOString() }}
      isUsed={usedAt !== null}
      isAway={archivedAt !== null}
      isOfClass={from === "class"}
      criteria={read.criteria}
    />
  );
}
