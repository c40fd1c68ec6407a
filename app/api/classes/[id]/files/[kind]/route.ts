import { answerRefusal } from "@/app/_server/http/answer";
import { answerFile } from "@/app/_server/http/answer-file";
import { currentCaller } from "@/app/_server/session";
import { writeClassFile } from "@/app/_server/use-cases/write-class-file";

/** All marks of a class as CSV. */
export async function GET(_request: Request, { params }: RouteContext<"/api/classes/[id]/files/[kind]">) {
  const { id, kind } = await params;
  const file = await writeClassFile(await currentCaller(), id, kind);
  return file.ok ? answerFile(file) : answerRefusal(file);
}
