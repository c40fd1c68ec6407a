"use client";
import { toScreen, type Viewport } from "@/lib/bench";
import { MarkTag } from "./call-marks";
import { DRAWN } from "./palette";
import { TwoToneLine } from "./two-tone";

/** An indication being drawn, from where it began to where the pointer or the cursor is. */
export interface Drawing {
  readonly start: number;
  readonly end: number;
  readonly across: number;
}

export function DrawingBand({ view, drawing }: { view: Viewport; drawing: Drawing }) {
  const from = toScreen(view, { x: Math.min(drawing.start, drawing.end), y: drawing.across });
  const to = toScreen(view, { x: Math.max(drawing.start, drawing.end), y: drawing.across });
  const half = Math.max(11, 2 * view.scale);
  const length = Math.abs(drawing.end - drawing.start);
  return (
    <>
      <TwoToneLine
        closed
        stroke={DRAWN.open}
        dash={[6, 4]}
        points={[
          from.left,
          from.top - half,
          to.left,
          to.top - half,
          to.left,
          to.top + half,
          from.left,
          from.top + half,
        ]}
      />
      <MarkTag
        left={(from.left + to.left) / 2}
        top={from.top - half - 4}
        text={`${Math.min(drawing.start, drawing.end).toFixed(1)} + ${length.toFixed(1)} mm`}
        colour={DRAWN.open}
      />
    </>
  );
}
