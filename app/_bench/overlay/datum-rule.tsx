"use client";
import { Group, Line, Rect, Text } from "react-konva";
import { seenFrom, ticksBetween, toScreen, type Viewport } from "@/lib/bench";
import { upOnScreen } from "@/lib/weld";
import { DRAWN, DRAWN_FONT } from "./palette";

const RULE_HEIGHT = 26;
const TICK_LENGTHS = { long: 12, middle: 9, short: 5 } as const;

/** A steel rule laid along the lower edge of the plate, zero at the datum; when that is out of sight, along the screen's. */
export function DatumRule({ view }: { view: Viewport }) {
  const { length, bottom } = seenFrom(view.aspect);
  const lower = toScreen(view, { x: 0, y: bottom * upOnScreen(view.aspect) }).top;
  const top = Math.min(lower + 6, view.height - RULE_HEIGHT - 4);
  const leftOf = (x: number) => toScreen(view, { x, y: 0 }).left;
  const from = Math.max(0, view.x - view.width / view.scale / 2);
  const to = Math.min(length, view.x + view.width / view.scale / 2);
  const left = Math.max(leftOf(0), -10);
  const right = Math.min(leftOf(length), view.width + 10);
  const ticks = ticksBetween(from, to, view.scale, 4);
  const numbered = ticks.filter(({ kind }) => kind === "long").map(({ at }) => at);
  const longStep = numbered.length > 1 ? numbered[1] - numbered[0] : 0;
  return (
    <Group y={top}>
      <Rect
        x={left - 1}
        width={right - left + 2}
        height={RULE_HEIGHT}
        fill={DRAWN.ruleFill}
        opacity={0.93}
        stroke={DRAWN.dark}
        strokeWidth={1}
        cornerRadius={2}
      />
      {ticks.map(({ at, kind }) => (
        <Line
          key={at}
          points={[leftOf(at), 0, leftOf(at), TICK_LENGTHS[kind]]}
          stroke={DRAWN.ruleInk}
          strokeWidth={kind === "long" ? 1.4 : 1}
          opacity={kind === "short" ? 0.65 : 1}
        />
      ))}
      {ticks
        .filter(({ kind }) => kind === "long")
        .map(({ at }) => (
          <Text
            key={at}
            x={leftOf(at) - (at === 0 ? -4 : at === length ? 54 : 25)}
            y={13}
            width={50}
            align={at === 0 ? "left" : at === length ? "right" : "center"}
            text={at === 0 && view.scale * longStep > 80 ? "0 datum" : String(at)}
            fontSize={11}
            fontFamily={DRAWN_FONT}
            fill={DRAWN.ruleInk}
          />
        ))}
    </Group>
  );
}
