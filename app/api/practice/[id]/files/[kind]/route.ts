import { answerRefusal } from "@/app/_server/http/answer";
import { answerFile } from "@/app/_server/http/answer-file";
import { currentCaller } from "@/app/_server/session";
import { writePracticeFile } from "@/app/_server/use-cases/write-practice-file";

/** The marks of one piece as CSV. */
export async function GET(_request: Request, { params }: RouteContext<"/api/practice/[id]/files/[kind]">) {
  const { id, kind } = await params;
  const file = await writePracticeFile(await currentCaller(), id, kind);
  return file.ok ? answerFile(file) : answerRefusal(file);
}
