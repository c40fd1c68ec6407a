import { JOINT_OF } from "@/lib/results";
import { PIECES } from "@/lib/weld";
import { readSurfaceBytes } from "@/prisma/stores/specimens";
import type { Caller } from "../caller";
import { requireVisiblePiece } from "../permissions";
import { refuse } from "../refusal";

/** The packed surface of one face of the piece, compressed with gzip. A tutor may look at the pieces that are handed in. */
export async function readSurface(caller: Caller, id: string, face: string) {
  const visible = await requireVisiblePiece(caller, id);
  if (!visible.ok) return visible;
  const { specimenId, section } = visible.practice;
  const known = PIECES[JOINT_OF[section]].faces.find((one) => one === face);
  if (!known) return refuse("no-such-surface");
  const bytes = await readSurfaceBytes(specimenId, known);
  return bytes ? ({ ok: true, specimenId, bytes } as const) : refuse("specimen-not-made");
}
