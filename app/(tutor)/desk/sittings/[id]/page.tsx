import type { Metadata } from "next";
import Link from "next/link";
import { currentCaller, showRefusal } from "@/app/_server/session";
import { readBoard } from "@/app/_server/use-cases/read-board";
import { Caution } from "@/app/_ui/caution";
import { LocalTime } from "@/app/_ui/local-time";
import { PageFrame } from "@/app/_ui/page-frame";
import { readableBoard } from "../_board/board";
import { LiveBoard } from "../_board/live-board";

export const metadata: Metadata = { title: "Sitting" };

export default async function SittingPage({ params }: PageProps<"/desk/sittings/[id]">) {
  const { id } = await params;
  const read = await readBoard(await currentCaller(), id);
  if (!read.ok) return showRefusal(read);
  const { board, now } = read;
  const { paperName, className, plannedAt } = board.sitting;
  return (
    <PageFrame
      title={paperName}
      lead={
        <>
          {className}, <LocalTime at={plannedAt} />
        </>
      }
    >
      <Link href="/desk/sittings" className="mt-2 inline-block rounded py-2 text-action underline underline-offset-4">
        All sittings
      </Link>
      <LiveBoard initial={readableBoard(board)} now={now} />
      <Caution />
    </PageFrame>
  );
}
