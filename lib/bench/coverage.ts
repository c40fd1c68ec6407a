import type { Mm } from "../math";
import { faceOf, jointOf, PIECES, type SurfaceFace } from "../weld";
import { stretchInSight, type Viewport } from "./viewport";

/** For each face and each whole mm along the weld: has it been looked at closely enough to see a small pore? */
export type Coverage = Readonly<Record<SurfaceFace, readonly boolean[]>>;

/** A stretch along the weld, mm from the datum. */
export interface Stretch {
  readonly from: Mm;
  readonly to: Mm;
}

/** Magnification from which a look counts, screen pixels per mm. */
export const CLOSE_LOOK_SCALE = 5;

const unseen = (face: SurfaceFace): readonly boolean[] => new Array<boolean>(PIECES[jointOf(face)].length).fill(false);
export const NOTHING_SEEN: Coverage = { cap: unseen("cap"), root: unseen("root"), fillet: unseen("fillet") };

/** Adds what is in sight; gives the same object back where nothing is new. The weld's centre line must be in sight. */
export function withLook(coverage: Coverage, view: Viewport): Coverage {
  const face = faceOf(view.aspect);
  const isWeldInSight = Math.abs(view.up) * view.scale < view.height / 2;
  if (view.scale < CLOSE_LOOK_SCALE || !isWeldInSight) return coverage;
  const { from, to } = stretchInSight(view);
  const seen = coverage[face];
  if (!seen.some((was, mm) => !was && mm + 0.5 >= from && mm + 0.5 <= to)) return coverage;
  return { ...coverage, [face]: seen.map((was, mm) => was || (mm + 0.5 >= from && mm + 0.5 <= to)) };
}

/** What was looked at when these stretches of each face, mm from the datum, were; mm off the plate do not count. */
export function coverageOf(stretches: Readonly<Partial<Record<SurfaceFace, readonly Stretch[]>>>): Coverage {
  const seenOn = (face: SurfaceFace) =>
    unseen(face).map((_, mm) => (stretches[face] ?? []).some(({ from, to }) => mm >= from && mm < to));
  return { cap: seenOn("cap"), root: seenOn("root"), fillet: seenOn("fillet") };
}

/** Stretches of a face that have been looked at, mm from the datum, in order. */
export function seenStretches(seen: readonly boolean[]): readonly Stretch[] {
  const stretches: { from: Mm; to: Mm }[] = [];
  seen.forEach((was, mm) => {
    if (!was) return;
    const last = stretches[stretches.length - 1];
    if (last && last.to === mm) last.to = mm + 1;
    else stretches.push({ from: mm, to: mm + 1 });
  });
  return stretches;
}

/** Share of a face's weld that has been looked at, 0 to 1. */
export const shareSeen = (coverage: Coverage, face: SurfaceFace): number =>
  coverage[face].filter(Boolean).length / coverage[face].length;
