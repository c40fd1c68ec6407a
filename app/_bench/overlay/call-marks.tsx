"use client";
import { Circle, Group, Line, Rect, Text } from "react-konva";
import { toScreen, type Viewport } from "@/lib/bench";
import { type ImperfectionType, imperfection } from "@/lib/imperfections";
import type { Call } from "@/lib/report";
import type { Face } from "@/lib/weld";
import { DRAWN, DRAWN_FONT } from "./palette";
import { TwoToneLine } from "./two-tone";

export interface CallMarksProps {
  readonly view: Viewport;
  readonly face: Face;
  readonly calls: readonly Call[];
  readonly openId: string | null;
}

/** What the report says about this face, drawn where it says it: a ring for a point, brackets for a stretch. */
export function CallMarks({ view, face, calls, openId }: CallMarksProps) {
  return calls.map((call, index) =>
    call.face === face && call.start !== null ? (
      <CallMark key={call.id} call={call} number={index + 1} view={view} face={face} isOpen={call.id === openId} />
    ) : null,
  );
}

interface CallMarkProps {
  readonly call: Call;
  readonly number: number;
  readonly view: Viewport;
  readonly face: Face;
  readonly isOpen: boolean;
}

function CallMark({ call, number, view, face, isOpen }: CallMarkProps) {
  const { left, right, top, half } = markBox(call, view, face);
  const colour = isOpen ? DRAWN.open : DRAWN.light;
  const arm = 5;
  return (
    <Group>
      {call.end === null || right - left < 2 ? (
        <>
          <Circle x={left} y={top} radius={half} stroke={DRAWN.dark} strokeWidth={4.5} opacity={0.8} />
          <Circle x={left} y={top} radius={half} stroke={colour} strokeWidth={2} />
        </>
      ) : (
        <>
          <TwoToneLine
            points={[left + arm, top - half, left, top - half, left, top + half, left + arm, top + half]}
            stroke={colour}
          />
          <TwoToneLine
            points={[right - arm, top - half, right, top - half, right, top + half, right - arm, top + half]}
            stroke={colour}
          />
          <Line
            points={[left + arm, top - half, right - arm, top - half]}
            stroke={DRAWN.dark}
            strokeWidth={3}
            opacity={0.6}
          />
          <Line
            points={[left + arm, top - half, right - arm, top - half]}
            stroke={colour}
            strokeWidth={1}
            dash={[3, 5]}
          />
        </>
      )}
      <MarkTag left={(left + right) / 2} top={top - half - 4} text={tagText(number, call.type)} colour={colour} />
    </Group>
  );
}

const tagText = (number: number, type: ImperfectionType | null) =>
  type ? `${number} · ${imperfection(type).number}` : `${number} · ?`;

/** Screen box of a mark: never smaller than a fingertip can find. */
export function markBox(call: Call, view: Viewport, face: Face) {
  const y = call.across ?? 0;
  const start = call.start ?? 0;
  const end = call.end ?? start;
  const { left, top } = toScreen(view, face, { x: Math.min(start, end), y });
  const right = toScreen(view, face, { x: Math.max(start, end), y }).left;
  const reach = call.end === null ? (call.size ?? 1) / 2 + 0.7 : 2;
  return { left, right, top, half: Math.max(11, Math.min(reach, 4) * view.scale) };
}

/** A number plate above a mark: dark with a rim of the mark's colour. */
export function MarkTag({ left, top, text, colour }: { left: number; top: number; text: string; colour: string }) {
  const width = 12 + text.length * 6.8;
  return (
    <Group x={left - width / 2} y={top - 18}>
      <Rect
        width={width}
        height={17}
        cornerRadius={3}
        fill={DRAWN.dark}
        opacity={0.88}
        stroke={colour}
        strokeWidth={1}
      />
      <Text
        width={width}
        height={17}
        align="center"
        verticalAlign="middle"
        text={text}
        fontSize={11.5}
        fontStyle="600"
        fontFamily={DRAWN_FONT}
        fill={colour}
      />
    </Group>
  );
}
