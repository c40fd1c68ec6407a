import { forEachPixel } from "../../surface";
import type { FaceWork } from "../work";

/** How far from an end the weld's height is felt, mm. */
const CROWN_WITHIN = 4;

/** Mean height of the weld's crest over the plates at an end, mm, where `levelAt` gives the plates' own level; 0 where no weld is. */
export function crownAt({ strip, joint }: FaceWork, end: number, levelAt: (i: number, y: number) => number): number {
  const crests = new Map<number, number>();
  const box = { x0: end - CROWN_WITHIN, x1: end + CROWN_WITHIN, y0: -24, y1: 24 };
  forEachPixel(strip.grid, box, (k, x, y, i) => {
    if (strip.bead[k] < 0.9 || x < 0.6 || x > joint.length - 0.6) return;
    crests.set(i, Math.max(crests.get(i) ?? 0, strip.z[k] - levelAt(i, y)));
  });
  return crests.size === 0 ? 0 : [...crests.values()].reduce((sum, crest) => sum + crest, 0) / crests.size;
}
