import { answer, answerRefusal } from "@/app/_server/http/answer";
import { MAX_PAPER_BYTES } from "@/app/_server/http/paper-limit";
import { readJson } from "@/app/_server/http/read-json";
import { currentCaller } from "@/app/_server/session";
import { savePaper } from "@/app/_server/use-cases/save-paper";

/** Keeps a new paper: `{ paper, seen: null }`, answered with `{ id, number, updatedAt }`. */
export async function POST(request: Request): Promise<Response> {
  const read = await readJson(request, MAX_PAPER_BYTES);
  if (!read.ok) return answerRefusal(read);
  const saved = await savePaper(await currentCaller(), null, read.body);
  return saved.ok ? answer(saved, 201) : answerRefusal(saved);
}
