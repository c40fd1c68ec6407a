"use client";
import { toScreen, type Viewport } from "@/lib/bench";
import type { Face, SurfaceFace } from "@/lib/weld";
import { MarkTag } from "./call-marks";
import { DRAWN } from "./palette";
import { TwoToneLine } from "./two-tone";

/** A closed outline on a face: what was there (unbroken) or what was called (broken). */
export interface Highlight {
  readonly id: string;
  readonly face: SurfaceFace;
  readonly style: "truth" | "call";
  /** Corners in order, mm: x from the datum, y across. */
  readonly outline: readonly (readonly [x: number, y: number])[];
  readonly label: string;
}

interface OutlinesProps {
  readonly view: Viewport;
  readonly face: Face;
  readonly highlights: readonly Highlight[];
  readonly chosenId: string | null;
}

export function Outlines({ view, face, highlights, chosenId }: OutlinesProps) {
  return highlights
    .filter((highlight) => highlight.face === face)
    .map((highlight) => {
      const corners = highlight.outline.map(([x, y]) => toScreen(view, face, { x, y }));
      const isTruth = highlight.style === "truth";
      const colour = isTruth ? DRAWN.truth : DRAWN.call;
      const tops = corners.map(({ top }) => top);
      const lefts = corners.map(({ left }) => left);
      const middle = (Math.min(...lefts) + Math.max(...lefts)) / 2;
      return [
        <TwoToneLine
          key={highlight.id}
          closed
          points={corners.flatMap(({ left, top }) => [left, top])}
          stroke={colour}
          strokeWidth={highlight.id === chosenId ? 3 : 1.8}
          dash={isTruth ? undefined : [7, 5]}
        />,
        <MarkTag
          key={`${highlight.id} tag`}
          left={middle}
          top={isTruth ? Math.min(...tops) - 3 : Math.max(...tops) + 22}
          text={highlight.label}
          colour={colour}
        />,
      ];
    });
}
