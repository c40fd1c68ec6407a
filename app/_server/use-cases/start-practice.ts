import { z } from "zod";
import { DEFAULT_CRITERIA } from "@/lib/criteria";
import { BOOKS, MAX_OPEN_PRACTICES } from "@/lib/practice";
import { JOINT_OF, marksSchema, SECTIONS } from "@/lib/results";
import { startOnNextPiece } from "@/prisma/stores/next-pieces";
import { countOpenPractices, createPractice } from "@/prisma/stores/practices";
import { readWorkshop } from "@/prisma/stores/workshops";
import type { Caller } from "../caller";
import type { SpecimenSource } from "../generation/specimen-source";
import { describeProblem, type InputProblem } from "../input-problem";
import { requireOpenBook, requireSignedIn } from "../permissions";
import { randomId } from "../random-id";
import { refuse } from "../refusal";
import { criteriaById } from "./criteria-by-id";

const inputSchema = z.strictObject({
  section: z.enum(SECTIONS).default("plate"),
  passMark: marksSchema.optional(),
  criteriaId: z.string().default(DEFAULT_CRITERIA.id),
  book: z.enum(BOOKS).default("open"),
  /** The one that was chosen for the caller, if there is one, or any. */
  piece: z.enum(["chosen", "any"]).default("chosen"),
});

const UNKNOWN_CRITERIA: InputProblem = {
  path: "criteriaId",
  wanted: "the id of a built-in or an in-house criteria set",
};

/**
 * Puts a fresh piece for one section on the caller's bench, a plate unless another is asked for: the one that was chosen for them,
 * made or still being made; without one, or where they want any, one that is ready or else made while they wait. The criteria are
 * kept with it as they are now.
 */
export async function startPractice(caller: Caller, input: unknown, specimens: SpecimenSource) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const parsed = inputSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { problem: describeProblem(parsed.error) });
  if (parsed.data.book === "open") {
    const reader = await requireOpenBook(caller);
    if (!reader.ok) return reader;
  }
  const workshop = await readWorkshop();
  if (!workshop) return refuse("not-set-up");
  if ((await countOpenPractices(signedIn.actor.id)) >= MAX_OPEN_PRACTICES) return refuse("too-many-open");

  const { section, passMark = workshop.passMarks[section], criteriaId, book, piece } = parsed.data;
  const criteria = await criteriaById(criteriaId);
  if (!criteria)
    return refuse("invalid-input", {
      problem: UNKNOWN_CRITERIA,
      fields: { criteriaId: "These criteria are gone. Choose others." },
    });
  const id = randomId();
  const startedAt = caller.clock();
  const practice = { id, userId: signedIn.actor.id, section, passMark, criteria, book, startedAt };
  const chosenId = piece === "chosen" ? await startOnNextPiece(practice) : null;
  if (chosenId) {
    await specimens.hurry(chosenId);
    return { ok: true, id } as const;
  }
  const kind = JOINT_OF[section];
  const { specimenId } = (await specimens.takeReady(kind)) ?? (await specimens.requestOne(kind));
  await createPractice({ ...practice, specimenId });
  return { ok: true, id } as const;
}
