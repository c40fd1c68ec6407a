import { liveAnswer } from "@/app/_server/http/live-answer";
import { currentCaller } from "@/app/_server/session";
import { followClock, noteStillThere } from "@/app/_server/use-cases/start-section";

/** The learner's section as events: "run" with `{ now, ...LiveRun }` at once and after every change, "time" with `{ now }`. */
export async function GET(request: Request, { params }: RouteContext<"/api/runs/[id]/live">) {
  const { id } = await params;
  const caller = await currentCaller();
  const read = async () => {
    const clock = await followClock(caller, id);
    return clock.ok ? { ok: true as const, now: clock.now, value: clock.run } : clock;
  };
  return liveAnswer(request, { event: "run", read, onHeartbeat: () => noteStillThere(caller, id) });
}
