import { answer, answerRefusal } from "@/app/_server/http/answer";
import { MAX_PAPER_BYTES } from "@/app/_server/http/paper-limit";
import { readJson } from "@/app/_server/http/read-json";
import { currentCaller } from "@/app/_server/session";
import { savePaper } from "@/app/_server/use-cases/save-paper";

/**
 * Keeps a change of a paper: `{ paper, seen }`, answered with `{ id, number, updatedAt }`. One that has not seen the stored
 * paper is refused with 409, the code "newer-paper" and its `updatedAt`.
 */
export async function PUT(request: Request, { params }: RouteContext<"/api/papers/[id]">) {
  const { id } = await params;
  const read = await readJson(request, MAX_PAPER_BYTES);
  if (!read.ok) return answerRefusal(read);
  const saved = await savePaper(await currentCaller(), id, read.body);
  return saved.ok ? answer(saved) : answerRefusal(saved);
}
