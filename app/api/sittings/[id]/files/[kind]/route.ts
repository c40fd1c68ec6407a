import { answerRefusal } from "@/app/_server/http/answer";
import { answerFile } from "@/app/_server/http/answer-file";
import { currentCaller } from "@/app/_server/session";
import { writeSittingFile } from "@/app/_server/use-cases/write-sitting-file";

/** All marks of a sitting as CSV. */
export async function GET(_request: Request, { params }: RouteContext<"/api/sittings/[id]/files/[kind]">) {
  const { id, kind } = await params;
  const file = await writeSittingFile(await currentCaller(), id, kind);
  return file.ok ? answerFile(file) : answerRefusal(file);
}
