import { readPaper as readKeptPaper } from "@/prisma/stores/papers";
import type { Caller } from "../caller";
import { requireTutor } from "../permissions";
import { refuse } from "../refusal";

/** One paper as it stands, for a tutor. */
export async function readPaper(caller: Caller, id: string) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const kept = await readKeptPaper(id);
  return kept ? ({ ok: true, kept } as const) : refuse("no-such-paper");
}
