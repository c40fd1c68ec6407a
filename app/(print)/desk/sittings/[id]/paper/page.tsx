import type { Metadata } from "next";
import { PaperFrame } from "@/app/_paper/paper-frame";
import { PrintedBlocks } from "@/app/_paper/printed-blocks";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readBoard } from "@/app/_server/use-cases/read-board";
import { readableBoard } from "@/app/(tutor)/desk/sittings/_board/board";
import { actWords, erasedWords, runName, runWords } from "@/app/(tutor)/desk/sittings/_board/board-words";
import { standingWords } from "@/app/(tutor)/desk/sittings/standing-words";
import { type SittingRow, sittingPrint } from "@/lib/printing";

export const metadata: Metadata = { title: "Results of a sitting to print" };

export default async function SittingPaperPage({ params }: PageProps<"/desk/sittings/[id]/paper">) {
  const { id } = await params;
  const read = await readBoard(await currentCaller(), id);
  if (!read.ok) return showRefusal(read);
  const { sitting, learners, erased, log } = readableBoard(read.board);
  const { paperName, className } = sitting;
  const rows = learners.flatMap(({ name, runs }) =>
    runs.map((run): SittingRow => {
      const kind =
        run.placed?.kind === "re-sit" ? "re-sit" : run.placed?.kind === "extra" ? "had been passed before" : "";
      return {
        learner: name,
        section: runName(run),
        mark: run.mark,
        isVoid: run.state === "void",
        note: run.state === "void" ? (run.voidReason ?? "") : run.mark ? kind : runWords(run, sitting.state),
      };
    }),
  );
  const ofErased = erased.flatMap(({ sections }) =>
    sections.map(
      (one): SittingRow => ({
        learner: "Erased learner",
        section: runName(one),
        mark: null,
        isVoid: one.state === "void",
        note: erasedWords(one),
      }),
    ),
  );
  const blocks = sittingPrint({
    ...sitting,
    rows: [...rows, ...ofErased],
    standings: learners.flatMap(({ name, standing }) =>
      standing ? [{ learner: name, words: standingWords(standing) }] : [],
    ),
    log: log.map((entry) => ({
      at: entry.at,
      by: entry.actorName || "an account that is gone",
      what: actWords(entry, learners),
      reason: entry.reason,
    })),
    at: read.now,
  });
  return (
    <PaperFrame
      title="Results of a sitting"
      of={`${paperName}, ${className}`}
      back={{ href: `/desk/sittings/${id}`, name: "Back to the sitting" }}
    >
      <PrintedBlocks blocks={blocks} />
    </PaperFrame>
  );
}
