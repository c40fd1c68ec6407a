"use client";
import { type FaceHeights, type ProfileMark, ProfilePanel, withGrids } from "@/app/_bench";
import { imperfection } from "@/lib/imperfections";
import { heightAt } from "@/lib/surface";
import type { SurfaceFace } from "@/lib/weld";
import type { TruthView } from "./sheet-view";

const HALF_WIDTH = 20;

interface PlaceProfileProps {
  readonly heights: FaceHeights | null;
  readonly truth: TruthView | null;
  readonly place: { readonly x: number; readonly y: number; readonly face: SurfaceFace };
}

/** The weld cut across at the place of a line, with the measured depth or height drawn on it. */
export function PlaceProfile({ heights, truth, place }: PlaceProfileProps) {
  // the section keeps the whole weld in sight and moves along only for what lies far out on the plate
  const middle = Math.abs(place.y) > HALF_WIDTH - 6 ? place.y - Math.sign(place.y) * (HALF_WIDTH - 8) : 0;
  return (
    <div className="rounded-md border border-line bg-sheet p-3">
      <ProfilePanel
        face={place.face}
        surface={heights}
        x={place.x}
        y0={middle - HALF_WIDTH}
        y1={middle + HALF_WIDTH}
        marks={heights && truth ? measureOf(heights, truth) : []}
      />
    </div>
  );
}

/** The measured size as two levels: the surface at the worst place, and where it would be without the imperfection. */
function measureOf(heights: FaceHeights, truth: TruthView): readonly ProfileMark[] {
  const kind = imperfection(truth.type).size;
  // across a fillet no depth stands upright
  if (truth.face === "fillet") return [];
  if (truth.size === null || (kind !== "depth" && kind !== "height") || truth.type === "linear-misalignment") return [];
  const [x, y] = truth.worst;
  const to = heightAt(withGrids(truth.face, heights), x, y);
  const from = kind === "depth" ? to + truth.size : to - truth.size;
  return [{ y, from, to, label: `${kind} ${truth.size.toFixed(1)} mm` }];
}
