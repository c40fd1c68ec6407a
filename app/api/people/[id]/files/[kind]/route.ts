import { answerRefusal } from "@/app/_server/http/answer";
import { answerFile } from "@/app/_server/http/answer-file";
import { currentCaller } from "@/app/_server/session";
import { writeHistoryFile } from "@/app/_server/use-cases/write-history-file";

/** All marks of one person as CSV. */
export async function GET(_request: Request, { params }: RouteContext<"/api/people/[id]/files/[kind]">) {
  const { id, kind } = await params;
  const file = await writeHistoryFile(await currentCaller(), id, kind);
  return file.ok ? answerFile(file) : answerRefusal(file);
}
