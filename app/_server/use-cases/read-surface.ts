import { FACES, type Face } from "@/lib/weld";
import { readPractice } from "@/prisma/stores/practices";
import { readSurfaceBytes } from "@/prisma/stores/specimens";
import type { Caller } from "../caller";
import { requireSignedIn } from "../permissions";
import { refuse } from "../refusal";

/** The packed surface of one face, compressed with gzip. A tutor may look at the plates that are handed in. */
export async function readSurface(caller: Caller, id: string, face: string) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const practice = await readPractice(id);
  const { actor } = signedIn;
  const mayLook = practice?.userId === actor.id || (actor.role === "tutor" && practice?.state === "handed-in");
  if (!practice || !mayLook) return refuse("no-such-practice");
  if (!isFace(face)) return refuse("no-such-surface");
  const bytes = await readSurfaceBytes(practice.specimenId, face);
  return bytes ? ({ ok: true, specimenId: practice.specimenId, bytes } as const) : refuse("specimen-not-made");
}

function isFace(text: string): text is Face {
  return (FACES as readonly string[]).includes(text);
}
