import { answerRefusal } from "@/app/_server/http/answer";
import { currentCaller } from "@/app/_server/session";
import { readEyeWindow } from "@/app/_server/use-cases/read-eye-window";

/** The metal of a window never changes; only the browser that it was sent to may keep it. */
const headers = {
  "content-type": "application/gzip",
  "cache-control": "private, max-age=86400, immutable",
  vary: "cookie",
};

/** The packed metal of one window of a task, see `unpackTile` in lib/surface, as a gzip file. */
export async function GET(_request: Request, { params }: RouteContext<"/api/eye/tasks/[id]/windows/[window]">) {
  const { id, window } = await params;
  const read = await readEyeWindow(await currentCaller(), id, window);
  return read.ok ? new Response(read.bytes, { headers }) : answerRefusal(read);
}
