import { merged, NO_TRAIL, packTrail, type Trail, unpackTrail } from "@/lib/trail";
import { database } from "../client";
import { trailColumn } from "../columns";

/** Windows of one practice whose trails are kept; a learner who opens the bench anew every minute for an hour needs fewer. */
const MOST_WINDOWS = 100;

export interface WindowTrail {
  readonly windowId: string;
  readonly number: number;
  /** Everything that the window has seen so far. */
  readonly trail: Trail;
}

/** Keeps the trail of a window in place of its earlier one; the same or an older one once more changes nothing. */
export async function keepViewTrail(
  practiceId: string,
  { windowId, number, trail }: WindowTrail,
): Promise<"kept" | "handed-in" | "too-many-windows"> {
  const key = { practiceId, windowId };
  return database().$transaction(async (transaction) => {
    const isOpen = await transaction.practice.count({ where: { id: practiceId, state: "open" } });
    if (isOpen === 0) return "handed-in";
    const data = { number, trail: trailColumn.write(packTrail(trail)) };
    const known = await transaction.viewTrail.findUnique({ where: { practiceId_windowId: key } });
    if (known) {
      await transaction.viewTrail.updateMany({ where: { ...key, number: { lt: number } }, data });
      return "kept";
    }
    if ((await transaction.viewTrail.count({ where: { practiceId } })) >= MOST_WINDOWS) return "too-many-windows";
    await transaction.viewTrail.create({ data: { ...key, ...data } });
    return "kept";
  });
}

/** Where somebody looked, all windows together; null where nothing was recorded. */
export async function readViewTrail(practiceId: string): Promise<Trail | null> {
  const rows = await database().viewTrail.findMany({ where: { practiceId }, select: { trail: true } });
  if (rows.length === 0) return null;
  return rows.reduce((sum, { trail }) => merged(sum, unpackTrail(trailColumn.read(trail))), NO_TRAIL);
}
