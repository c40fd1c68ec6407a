import { listPapers as listKeptPapers } from "@/prisma/stores/papers";
import type { Caller } from "../caller";
import { requireTutor } from "../permissions";

/** Every paper of the workshop, for its tutors: the one last saved first, also those that are put away. */
export async function listPapers(caller: Caller) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  return { ok: true, papers: await listKeptPapers() } as const;
}
