"use client";
import { Path, Rect, Text } from "react-konva";
import type { Viewport } from "@/lib/bench";
import { GAUGES, scaleLines } from "@/lib/gauges";
import { DRAWN, DRAWN_FONT } from "./palette";
import { type Plan, RULE } from "./plan-of-gauge";

/** Lines closer together than this run into one another, px. */
const LEAST_APART = 3.2;
const LEAST_NUMBER_APART = 30;

/** The steel rule lying on the plate: its graduated edge on the line through its spot, its face to the right. */
export function RuleFace({ view, plan }: { view: Viewport; plan: Plan }) {
  const { scale } = view;
  const step = [0.5, 1, 5, 10].find((apart) => apart * scale >= LEAST_APART) ?? 10;
  const numbered = [10, 20, 50, 100].find((apart) => apart * scale >= LEAST_NUMBER_APART) ?? 100;
  const length = GAUGES["steel-rule"].range?.highest ?? 0;
  const height = Math.min(2.8 * scale, 15);
  const size = Math.max(10, height / 0.72);
  const seen = Math.hypot(view.width, view.height);
  const isSeen = (at: number) => at * scale <= seen + Math.hypot(plan.spot.left, plan.spot.top);
  const lines = scaleLines(0, length, step).filter(isSeen);
  return (
    <>
      <Rect
        width={RULE.length * scale}
        height={RULE.width * scale}
        cornerRadius={[0, 0, 3, 3]}
        fill="#c3c7c8"
        opacity={0.94}
        stroke={DRAWN.dark}
        strokeWidth={1.5}
      />
      <Path
        data={lines.map((at) => `M${(at * scale).toFixed(2)} 0V${(lineLength(at) * scale).toFixed(2)}`).join("")}
        stroke={DRAWN.ruleInk}
        strokeWidth={Math.max(0.8, 0.12 * scale)}
      />
      {scaleLines(numbered, length, numbered)
        .filter(isSeen)
        .map((at) => (
          <Text
            key={at}
            x={at * scale - 30}
            y={8.4 * scale}
            width={60}
            align="center"
            text={String(at)}
            fontSize={size}
            fontStyle="600"
            fontFamily={DRAWN_FONT}
            fill={DRAWN.ruleInk}
          />
        ))}
      <Text
        x={1.4 * scale}
        y={RULE.width * scale - size - 3}
        text="mm"
        fontSize={size}
        fontFamily={DRAWN_FONT}
        fill={DRAWN.ruleInk}
      />
    </>
  );
}

/** mm. */
const lineLength = (at: number): number => (at % 10 === 0 ? 8 : at % 5 === 0 ? 6 : at % 1 === 0 ? 4.2 : 2.6);
