import { clamp } from "../../math";
import type { RandomStream } from "../../random";
import type { Range } from "../measure";

/** One scoop that the arc took out of the plate's edge, mm. */
export interface Bite {
  readonly x: number;
  readonly half: number;
  /** How far it goes into the plate beyond the groove's own width. */
  readonly reach: number;
  /** Depth as a share of the deepest. */
  readonly depth: number;
}

/** Draws the bites of an undercut, each overlapping its neighbours a little; they follow the electrode's oscillation. */
export function drawBites(
  random: RandomStream,
  range: Range,
  { usual, uneven }: { readonly usual: number; readonly uneven: number },
): Bite[] {
  const bites: Bite[] = [];
  for (let x = range.from - 2; x < range.to + 2; ) {
    const spacing = clamp(random.logNormal(usual, uneven), 1, 2.5 * usual);
    const half = spacing * random.uniform(0.52, 0.8);
    bites.push({
      x: x + spacing / 2,
      half,
      reach: clamp(random.logNormal(0.42, 0.5), 0.1, Math.min(1, 0.55 * half)),
      depth: random.uniform(0.5, 1),
    });
    x += spacing;
  }
  return bites;
}

/** Depth share and reach of the bites at x: the largest of those that cover it, so that tongues of plate stand between them. */
export function bitten(bites: readonly Bite[], x: number): { reach: number; depth: number } {
  let reach = 0;
  let depth = 0;
  for (const bite of bites) {
    const along = (x - bite.x) / bite.half;
    if (Math.abs(along) >= 1) continue;
    const arc = Math.sqrt(1 - along * along);
    reach = Math.max(reach, bite.reach * arc);
    depth = Math.max(depth, bite.depth * arc ** 0.6);
  }
  return { reach, depth };
}
