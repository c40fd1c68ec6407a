import { archivePaper as archiveKeptPaper } from "@/prisma/stores/papers";
import type { Caller } from "../caller";
import { requireTutor } from "../permissions";
import { refuse } from "../refusal";

/** A tutor puts a paper away, so that no new sitting is made of it, or takes it back. Nothing of it is lost. */
export async function archivePaper(caller: Caller, id: string, isArchived: boolean) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const isDone = await archiveKeptPaper(id, isArchived ? caller.clock() : null);
  return isDone ? ({ ok: true } as const) : refuse("no-such-paper");
}
