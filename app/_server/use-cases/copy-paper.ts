import { PAPER_NAME_MOST } from "@/lib/sittings";
import { createPaper, readPaper, readPaperVersion } from "@/prisma/stores/papers";
import type { Caller } from "../caller";
import { requireTutor } from "../permissions";
import { randomId } from "../random-id";
import { refuse } from "../refusal";

/** A tutor begins a new paper from what another one says now, with its criteria as they stand there. */
export async function copyPaper(caller: Caller, id: string) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const kept = await readPaper(id);
  const version = kept && (await readPaperVersion(kept.current.id));
  if (!version) return refuse("no-such-paper");
  const { paper, criteria } = version;
  const copyId = randomId();
  await createPaper({
    id: copyId,
    versionId: randomId(),
    paper: { ...paper, name: copyName(paper.name) },
    criteria,
    ownerId: tutor.actor.id,
    createdAt: caller.clock(),
  });
  return { ok: true, id: copyId } as const;
}

const copyName = (name: string): string => `Copy of ${name}`.slice(0, PAPER_NAME_MOST).trimEnd();
