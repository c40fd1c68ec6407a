import { z } from "zod";
import { IMPERFECTION_TYPES } from "@/lib/imperfections";
import { askingFor, MOST_ASKED } from "@/lib/sittings";
import { createPaper } from "@/prisma/stores/papers";
import type { Caller } from "../caller";
import { checkPaper } from "../check-paper";
import { problemsByField } from "../input-problem";
import { requireOwnClass } from "../permissions";
import { randomId } from "../random-id";
import { refuse } from "../refusal";
import { beginPaper } from "./begin-paper";

const FEW = `types: 1 to ${MOST_ASKED} types of the catalogue`;
const inputSchema = z.object(
  {
    types: z
      .array(z.enum(IMPERFECTION_TYPES, { error: FEW }), { error: FEW })
      .min(1, FEW)
      .max(MOST_ASKED, FEW),
  },
  { error: "an object with types" },
);

/**
 * A tutor makes a paper whose pieces have what a class of theirs misses: `{ types }`, 1 to 12 of the catalogue. Everything
 * else is as in a new paper of the workshop; it has the class and the day in its name, and no sitting uses it yet.
 */
export async function setClassPaper(caller: Caller, classId: string, input: unknown) {
  const own = await requireOwnClass(caller, classId);
  if (!own.ok) return own;
  const read = inputSchema.safeParse(input);
  if (!read.success) return refuse("invalid-input", { fields: problemsByField(read.error) });
  const begun = await beginPaper(caller);
  if (!begun.ok) return begun;
  const now = caller.clock();
  const name = `${own.group.name}, ${DAY.format(now)}`;
  const checked = await checkPaper({ ...askingFor(read.data.types, begun.paper), name });
  if (!checked.ok) return checked;
  const { paper, criteria } = checked;
  const id = randomId();
  await createPaper({ id, versionId: randomId(), paper, criteria, ownerId: own.actor.id, createdAt: now });
  return { ok: true, id } as const;
}

/** "2 March 2026": with a class's name, of 60 characters at most, no longer than the name of a paper may be. */
const DAY = new Intl.DateTimeFormat("en-GB", { dateStyle: "long" });
