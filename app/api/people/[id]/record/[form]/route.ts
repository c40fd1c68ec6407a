import { answerRefusal } from "@/app/_server/http/answer";
import { answerStream } from "@/app/_server/http/answer-stream";
import { currentCaller } from "@/app/_server/session";
import { writeRecord } from "@/app/_server/use-cases/write-record";

/** Everything kept of one person. */
export async function GET(_request: Request, { params }: RouteContext<"/api/people/[id]/record/[form]">) {
  const { id, form } = await params;
  const record = await writeRecord(await currentCaller(), id, form);
  return record.ok ? answerStream(record) : answerRefusal(record);
}
