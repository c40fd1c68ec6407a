/** Today shows itself anew every 3 s, and later every 15 s, while nothing is chosen: whoever asks again so soon has stayed there, ms. */
const STAYED = { least: 2_000, most: 20_000 };

/** When people last asked for Today, by their ids; where they asked twice within a moment, the first time. */
export type Seen = Map<string, number>;

/** Whether somebody who asks for Today now has been there since a moment ago, and does not only pass through; notes that they asked. */
export function isStaying(seen: Seen, userId: string, now: Date): boolean {
  const at = now.getTime();
  const before = seen.get(userId);
  for (const [other, last] of seen) if (at - last > STAYED.most) seen.delete(other);
  // two windows that ask in turn would never be far enough apart
  if (before !== undefined && at - before < STAYED.least) return false;
  seen.set(userId, at);
  return before !== undefined && at - before <= STAYED.most;
}
