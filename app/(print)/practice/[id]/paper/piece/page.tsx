import type { Metadata } from "next";
import { PiecePaper } from "@/app/_paper/piece-paper";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { sheetViewOf } from "@/app/_server/sheet-view-of";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import { readPieceSheet } from "@/app/_server/use-cases/read-piece-sheet";
import { answersPrint, piecePages } from "@/lib/printing";
import { describeJoint } from "@/lib/weld";

export const metadata: Metadata = { title: "Piece to print" };

/** Without answers for whoever may look at the piece; with `?answers=yes` for whoever may read its mark sheet. */
export default async function PiecePaperPage({ params, searchParams }: PageProps<"/practice/[id]/paper/piece">) {
  const { id } = await params;
  const caller = await currentCaller();
  const read = await readPieceSheet(caller, id);
  if (!read.ok) return showRefusal(read);
  const hasAnswers = (await searchParams).answers === "yes";
  const marked = hasAnswers ? await readMarkSheet(caller, id) : null;
  if (marked && !marked.ok) return showRefusal(marked);
  const view = marked && sheetViewOf(marked.sheet);
  const answers = view && {
    truths: view.truths,
    tables: answersPrint({ ...view, statements: marked.sheet.truth.statements }),
  };
  return (
    <PiecePaper
      id={id}
      kind={read.kind}
      joint={describeJoint(read.joint)}
      pages={piecePages(read.kind)}
      back={
        read.state === "open"
          ? { href: `/practice/${id}`, name: "Back to the bench" }
          : { href: `/practice/${id}/marks`, name: "Back to the mark sheet" }
      }
      answers={answers}
    />
  );
}
