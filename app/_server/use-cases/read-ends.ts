import { JOINT_OF } from "@/lib/results";
import { readEndViews } from "@/prisma/stores/specimens";
import type { Caller } from "../caller";
import { requireVisiblePiece } from "../permissions";
import { refuse } from "../refusal";

/**
 * Both ends of a fillet joint as an eye along the weld sees them; the gap under the standing plate is measured on them by
 * feeler, so they are no answer. A tutor may look at the pieces that are handed in.
 */
export async function readEnds(caller: Caller, id: string) {
  const visible = await requireVisiblePiece(caller, id);
  if (!visible.ok) return visible;
  const { specimenId, section } = visible.practice;
  if (JOINT_OF[section] !== "fillet") return refuse("no-such-surface");
  const ends = await readEndViews(specimenId);
  return ends ? ({ ok: true, specimenId, ends } as const) : refuse("specimen-not-made");
}
