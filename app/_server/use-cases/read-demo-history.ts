import { readDemoHistory as readStored } from "@/prisma/stores/demo-history";
import type { Caller } from "../caller";
import { requireTutor } from "../permissions";

/** How far the past of the demo workshop is written, for its tutors; null where there is none or it is whole. */
export async function readDemoHistory(caller: Caller) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const stored = await readStored();
  const writing = stored && stored.finishedAt === null ? { done: stored.done, total: stored.total } : null;
  return { ok: true, writing } as const;
}
