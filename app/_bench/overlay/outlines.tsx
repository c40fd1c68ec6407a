"use client";
import { type HeightAt, seenPlace, toScreen, type Viewport } from "@/lib/bench";
import { faceOf, type SurfaceFace } from "@/lib/weld";
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
  readonly highlights: readonly Highlight[];
  readonly chosenId: string | null;
  /** Heights of the face itself: where something is seen on a piece that is turned depends on them. */
  readonly heightAt: HeightAt;
}

export function Outlines({ view, highlights, chosenId, heightAt }: OutlinesProps) {
  return highlights
    .filter((highlight) => highlight.face === faceOf(view.aspect))
    .map((highlight) => {
      const corners = highlight.outline.flatMap(([x, y]) => {
        const place = seenPlace(view.aspect, { x, y }, heightAt);
        return place ? [toScreen(view, place)] : [];
      });
      if (corners.length < 3) return null;
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
