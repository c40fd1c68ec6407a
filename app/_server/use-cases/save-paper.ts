import { z } from "zod";
import { createPaper, readPaper, updatePaper } from "@/prisma/stores/papers";
import type { Caller } from "../caller";
import { checkPaper } from "../check-paper";
import { problemsByField } from "../input-problem";
import { requireTutor } from "../permissions";
import { randomId } from "../random-id";
import { refuse } from "../refusal";

const inputSchema = z.object(
  {
    paper: z.unknown(),
    seen: z.iso
      .datetime({ error: "seen: when the paper was saved that was changed, like 2026-03-02T08:00:00.000Z" })
      .nullable(),
  },
  { error: "an object with paper and seen" },
);

/**
 * A tutor saves a paper, whoever made it: `{ paper, seen }`, where `seen` is the time of the save that was changed, and null
 * for a new paper (`id` null). A save that has not seen the stored one is refused, with the time of that one. What a sitting
 * uses stays as it is: the save then makes a new version.
 */
export async function savePaper(caller: Caller, id: string | null, input: unknown) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const read = inputSchema.safeParse(input);
  if (!read.success) return refuse("invalid-input", { fields: problemsByField(read.error) });
  const kept = id === null ? null : await readPaper(id);
  if (id !== null && !kept) return refuse("no-such-paper");
  const checked = await checkPaper(read.data.paper);
  if (!checked.ok) return checked;
  const { paper, criteria } = checked;
  const content = { paper, criteria, versionId: randomId() };
  if (!kept) {
    const created = { id: randomId(), ownerId: tutor.actor.id, createdAt: caller.clock(), ...content };
    await createPaper(created);
    return { ok: true, id: created.id, number: 1, updatedAt: created.createdAt } as const;
  }
  if (kept.archivedAt !== null) return refuse("paper-put-away");
  const seen = new Date(read.data.seen ?? 0);
  // two saves never have the same time, also where the clock stands still or goes back
  const updatedAt = new Date(Math.max(caller.clock().getTime(), seen.getTime() + 1));
  const isSaved = await updatePaper({ id: kept.id, seen, updatedAt, ...content });
  const now = (await readPaper(kept.id)) ?? kept;
  if (!isSaved) return refuse("newer-paper", { updatedAt: now.updatedAt });
  return { ok: true, id: kept.id, number: now.current.number, updatedAt } as const;
}
