import { type MaterialFace, materialOf } from "@/lib/eye-tasks";
import { listForDrills, readTruths } from "@/prisma/stores/specimens";

/**
 * What windows can be cut from of each piece for drills. What is on a piece never changes, and to read it from the database is some
 * milliseconds a piece of the server's one thread.
 */
const known = new Map<string, readonly MaterialFace[]>();

/** What windows can be cut from of all pieces for drills, the oldest first; only those that are new since the last time are read. */
export async function drillStockMaterial(): Promise<readonly MaterialFace[]> {
  const ids = await listForDrills();
  for (const id of known.keys()) if (!ids.includes(id)) known.delete(id);
  const unknown = ids.filter((id) => !known.has(id));
  const read = unknown.length > 0 ? await readTruths(unknown) : [];
  for (const piece of read) known.set(piece.specimenId, materialOf([piece]));
  return ids.flatMap((id) => known.get(id) ?? []);
}
