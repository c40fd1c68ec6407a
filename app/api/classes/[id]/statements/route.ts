import { answerRefusal } from "@/app/_server/http/answer";
import { answerStream } from "@/app/_server/http/answer-stream";
import { currentCaller } from "@/app/_server/session";
import { writeClassStatements } from "@/app/_server/use-cases/write-class-statements";

/** What counts of everybody in a class, as statements of the Experience API. */
export async function GET(_request: Request, { params }: RouteContext<"/api/classes/[id]/statements">) {
  const { id } = await params;
  const written = await writeClassStatements(await currentCaller(), id);
  return written.ok ? answerStream(written) : answerRefusal(written);
}
