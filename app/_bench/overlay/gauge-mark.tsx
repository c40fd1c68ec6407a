"use client";
import { Circle, Group, Line, Rect } from "react-konva";
import { toScreen, type Viewport } from "@/lib/bench";
import { type BridgePlacement, pointsOf } from "@/lib/gauges";
import type { Face } from "@/lib/weld";
import { DRAWN } from "./palette";

/** The bridge gauge from above: a slotted bar on two feet, the pointer at its end, a knob to turn it by. */
export function GaugeMark({ view, face, placement }: { view: Viewport; face: Face; placement: BridgePlacement }) {
  const points = pointsOf(placement);
  const tip = toScreen(view, face, points.tip);
  const near = toScreen(view, face, points.near);
  const far = toScreen(view, face, points.far);
  const knob = knobOf(view, face, placement);
  const angle = (Math.atan2(far.top - tip.top, far.left - tip.left) * 180) / Math.PI;
  const distance = (at: { left: number; top: number }) => Math.hypot(at.left - tip.left, at.top - tip.top);
  const length = distance(far) + 10;
  const half = Math.max(6, 1.6 * view.scale);
  return (
    <Group x={tip.left} y={tip.top} rotation={angle}>
      <Rect
        x={6}
        y={-half}
        width={length - 6}
        height={2 * half}
        cornerRadius={3}
        fill="#3d474d"
        opacity={0.45}
        stroke={DRAWN.dark}
        strokeWidth={3}
      />
      <Rect
        x={6}
        y={-half}
        width={length - 6}
        height={2 * half}
        cornerRadius={3}
        stroke={DRAWN.light}
        strokeWidth={1.4}
      />
      <Line points={[14, 0, length - 8, 0]} stroke={DRAWN.dark} strokeWidth={2} opacity={0.7} />
      {[near, far].map((foot, index) => (
        <Rect
          key={index === 0 ? "near" : "far"}
          x={distance(foot) - 3}
          y={-half - 3}
          width={6}
          height={2 * half + 6}
          fill={DRAWN.light}
          stroke={DRAWN.dark}
          strokeWidth={1.5}
        />
      ))}
      <Circle radius={7} stroke={DRAWN.dark} strokeWidth={4} />
      <Circle radius={7} stroke={DRAWN.open} strokeWidth={2} />
      <Circle radius={1.5} fill={DRAWN.open} />
      <Circle x={distance(knob)} radius={9} fill="#3d474d" stroke={DRAWN.dark} strokeWidth={4} />
      <Circle x={distance(knob)} radius={9} stroke={DRAWN.open} strokeWidth={2} />
    </Group>
  );
}

/** Screen position of the knob, beyond the far foot. */
export function knobOf(view: Viewport, face: Face, placement: BridgePlacement) {
  const { tip, far } = pointsOf(placement);
  const a = toScreen(view, face, tip);
  const b = toScreen(view, face, far);
  const reach = Math.hypot(b.left - a.left, b.top - a.top) || 1;
  const share = (reach + 22) / reach;
  return { left: a.left + (b.left - a.left) * share, top: a.top + (b.top - a.top) * share };
}
