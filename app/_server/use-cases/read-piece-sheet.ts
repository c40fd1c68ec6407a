import { JOINT_OF } from "@/lib/results";
import { readTruth } from "@/prisma/stores/specimens";
import type { Caller } from "../caller";
import { factsOf } from "../joint-facts";
import { requireVisiblePiece } from "../permissions";
import { refuse } from "../refusal";

/**
 * What a sheet of a piece without answers says of it: the drawing's facts and nothing else of the truth. For whoever may look
 * at the piece itself.
 */
export async function readPieceSheet(caller: Caller, id: string) {
  const visible = await requireVisiblePiece(caller, id);
  if (!visible.ok) return visible;
  const { practice } = visible;
  const made = await readTruth(practice.specimenId);
  if (!made) return refuse("specimen-not-made");
  return { ok: true, id, kind: JOINT_OF[practice.section], joint: factsOf(made.truth), state: practice.state } as const;
}
