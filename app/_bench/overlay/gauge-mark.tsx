"use client";
import { Circle, Group, Line, Rect } from "react-konva";
import type { TrayPlacement, Viewport } from "@/lib/bench";
import { DRAWN } from "./palette";
import { type Plan, planOf } from "./plan-of-gauge";
import { RuleFace } from "./rule-face";

export interface GaugeMarkProps {
  readonly view: Viewport;
  readonly placement: TrayPlacement;
}

/** A gauge from above, to scale: blade, feet, the place of its moving part, and a knob to turn it by. */
export function GaugeMark({ view, placement }: GaugeMarkProps) {
  const plan = planOf(view, placement);
  return (
    <Group x={plan.spot.left} y={plan.spot.top} rotation={plan.angle}>
      {placement.kind === "steel-rule" ? <RuleFace view={view} plan={plan} /> : <Blade plan={plan} />}
      <Spot isPoint={placement.kind === "depth-gauge"} />
      <Knob plan={plan} />
    </Group>
  );
}

/** Thin enough to see the weld through it, with its feet where they stand. */
function Blade({ plan }: { plan: Plan }) {
  const half = Math.max(plan.left, 3);
  const edges = {
    x: plan.from,
    y: -half,
    width: plan.to - plan.from,
    height: 2 * half,
    cornerRadius: Math.min(3, half),
  };
  return (
    <>
      <Rect {...edges} fill="#3d474d" opacity={0.42} stroke={DRAWN.dark} strokeWidth={3} />
      <Rect {...edges} stroke={DRAWN.light} strokeWidth={1.3} />
      {plan.feet.map(({ from, to }) => (
        <Rect
          key={from}
          x={from}
          y={-half}
          width={Math.max(4, to - from)}
          height={2 * half}
          fill={DRAWN.light}
          stroke={DRAWN.dark}
          strokeWidth={1.5}
        />
      ))}
    </>
  );
}

/** Where the moving part comes down, or the rule's nought: an open ring, so that the place itself stays in sight. */
function Spot({ isPoint }: { isPoint: boolean }) {
  const radius = isPoint ? 6 : 8;
  return (
    <>
      {[
        [DRAWN.dark, 4.5],
        [DRAWN.open, 2],
      ].map(([stroke, strokeWidth]) => (
        <Group key={stroke}>
          <Circle radius={radius} stroke={stroke as string} strokeWidth={strokeWidth as number} />
          <Line points={[0, -radius - 7, 0, -radius]} stroke={stroke as string} strokeWidth={strokeWidth as number} />
          <Line points={[0, radius, 0, radius + 7]} stroke={stroke as string} strokeWidth={strokeWidth as number} />
        </Group>
      ))}
    </>
  );
}

function Knob({ plan }: { plan: Plan }) {
  return (
    <>
      {plan.knob > plan.to && (
        <>
          <Line points={[plan.to, 0, plan.knob - 11, 0]} stroke={DRAWN.dark} strokeWidth={4.5} />
          <Line points={[plan.to, 0, plan.knob - 11, 0]} stroke={DRAWN.open} strokeWidth={2} />
        </>
      )}
      <Circle x={plan.knob} radius={11} fill="#3d474d" stroke={DRAWN.dark} strokeWidth={4.5} />
      <Circle x={plan.knob} radius={11} stroke={DRAWN.open} strokeWidth={2} />
      {[-1, 1].map((side) => (
        <Line
          key={side}
          points={[plan.knob - 3, side * 3, plan.knob, side * 6.5, plan.knob + 3, side * 3]}
          stroke={DRAWN.open}
          strokeWidth={1.8}
        />
      ))}
    </>
  );
}
