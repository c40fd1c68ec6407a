import { liveAnswer } from "@/app/_server/http/live-answer";
import { currentCaller } from "@/app/_server/session";
import { readBoard } from "@/app/_server/use-cases/read-board";

/** The board of a sitting as events for its tutors: "board" with `{ now, ...Board }` at once and after every change. */
export async function GET(request: Request, { params }: RouteContext<"/api/sittings/[id]/live">) {
  const { id } = await params;
  const caller = await currentCaller();
  const read = async () => {
    const board = await readBoard(caller, id);
    return board.ok ? { ok: true as const, now: board.now, value: board.board } : board;
  };
  return liveAnswer(request, { event: "board", read });
}
