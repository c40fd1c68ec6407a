"use client";
import { Line } from "react-konva";
import { type Place, ticksBetween, toScreen, type Viewport } from "@/lib/bench";
import type { Face } from "@/lib/weld";
import { MarkTag } from "./call-marks";
import { DRAWN } from "./palette";
import { TwoToneLine } from "./two-tone";

/** A short steel rule laid from one place to another, on the face it was laid on. */
export interface LaidRule {
  readonly face: Face;
  readonly from: Place;
  readonly to: Place;
}

export const lengthOfRule = ({ from, to }: LaidRule): number => Math.hypot(to.x - from.x, to.y - from.y);

/** The rule's edge with its ticks to one side, and its length. */
export function LaidRuleMark({ view, rule }: { view: Viewport; rule: LaidRule }) {
  const from = toScreen(view, rule.face, rule.from);
  const to = toScreen(view, rule.face, rule.to);
  const length = lengthOfRule(rule);
  const reach = Math.hypot(to.left - from.left, to.top - from.top) || 1;
  const along = { left: (to.left - from.left) / reach, top: (to.top - from.top) / reach };
  const tick = (at: number, size: number) => {
    const left = from.left + along.left * at * view.scale;
    const top = from.top + along.top * at * view.scale;
    return [left, top, left - along.top * size, top + along.left * size];
  };
  return (
    <>
      <TwoToneLine points={[from.left, from.top, to.left, to.top]} stroke={DRAWN.open} strokeWidth={1.6} />
      {[0, length].map((end) => (
        <TwoToneLine key={end} points={tick(end, 14)} stroke={DRAWN.open} strokeWidth={1.6} />
      ))}
      {ticksBetween(0, length, view.scale).map(({ at, kind }) => (
        <Line
          key={at}
          points={tick(at, kind === "long" ? 11 : kind === "middle" ? 8 : 5)}
          stroke={DRAWN.light}
          strokeWidth={1}
          shadowColor={DRAWN.dark}
          shadowBlur={2}
          shadowOpacity={1}
        />
      ))}
      <MarkTag
        left={(from.left + to.left) / 2}
        top={Math.min(from.top, to.top) - 8}
        text={`${length.toFixed(1)} mm`}
        colour={DRAWN.open}
      />
    </>
  );
}
