import type { RandomStream } from "../../random";
import type { Range } from "./rows";

/** What is left of a stretch when others are cut out of it, in order; ends that touch leave nothing between them. */
export function freeStretches(whole: Range, taken: readonly Range[]): Range[] {
  const free: Range[] = [];
  let from = whole[0];
  for (const [low, high] of [...taken].sort((a, b) => a[0] - b[0])) {
    if (low > from) free.push([from, Math.min(low, whole[1])]);
    from = Math.max(from, high);
    if (from >= whole[1]) return free.filter(([a, b]) => b > a);
  }
  free.push([from, whole[1]]);
  return free.filter(([a, b]) => b > a);
}

/** How far from an end of a stretch something is put that is to leave room for others, mm. */
const CLOSE = 2.5;

/** A place in one of the stretches, all places equally likely; `crowded` puts it near an end of one. Null where there is none. */
export function drawWithin(stretches: readonly Range[], crowded: boolean, random: RandomStream): number | null {
  let left = random.uniform(0, 1) * stretches.reduce((sum, [low, high]) => sum + high - low, 0);
  for (const [low, high] of stretches) {
    if (left > high - low) {
      left -= high - low;
      continue;
    }
    if (!crowded) return low + left;
    const off = random.uniform(0, Math.min(CLOSE, high - low));
    return left < (high - low) / 2 ? low + off : high - off;
  }
  return null;
}
