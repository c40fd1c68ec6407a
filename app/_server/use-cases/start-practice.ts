import { z } from "zod";
import { MAX_OPEN_PRACTICES } from "@/lib/practice";
import { JOINT_OF, marksSchema, SECTIONS } from "@/lib/results";
import { countOpenPractices, createPractice } from "@/prisma/stores/practices";
import { readWorkshop } from "@/prisma/stores/workshops";
import type { Caller } from "../caller";
import type { SpecimenSource } from "../generation/specimen-source";
import { describeProblem } from "../input-problem";
import { requireSignedIn } from "../permissions";
import { randomId } from "../random-id";
import { refuse } from "../refusal";

const inputSchema = z.strictObject({ section: z.enum(SECTIONS).default("plate"), passMark: marksSchema.optional() });

/** Puts a fresh piece for one section on the caller's bench, a plate unless another is asked for: one that is ready, or else one made for them while they wait. */
export async function startPractice(caller: Caller, input: unknown, specimens: SpecimenSource) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const parsed = inputSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { problem: describeProblem(parsed.error) });
  const workshop = await readWorkshop();
  if (!workshop) return refuse("not-set-up");
  if ((await countOpenPractices(signedIn.actor.id)) >= MAX_OPEN_PRACTICES) return refuse("too-many-open");

  const { section, passMark = workshop.passMarks[section] } = parsed.data;
  const kind = JOINT_OF[section];
  const { specimenId } = (await specimens.takeReady(kind)) ?? (await specimens.requestOne(kind));
  const id = randomId();
  await createPractice({
    id,
    userId: signedIn.actor.id,
    specimenId,
    section,
    passMark,
    startedAt: caller.clock(),
  });
  return { ok: true, id } as const;
}
