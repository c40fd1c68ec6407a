import { answer, answerRefusal } from "@/app/_server/http/answer";
import { currentCaller } from "@/app/_server/session";
import { readBoard } from "@/app/_server/use-cases/read-board";

/** The board of a sitting for its tutors, `{ now, ...Board }`: for a page whose live line is down. */
export async function GET(_request: Request, { params }: RouteContext<"/api/sittings/[id]">) {
  const { id } = await params;
  const read = await readBoard(await currentCaller(), id);
  return read.ok ? answer({ now: read.now, ...read.board }) : answerRefusal(read);
}
