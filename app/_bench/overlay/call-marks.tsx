"use client";
import { Circle, Group, Line, Rect, Text } from "react-konva";
import { type Place, toScreen, type Viewport } from "@/lib/bench";
import { type ImperfectionType, imperfection } from "@/lib/imperfections";
import type { Call } from "@/lib/report";
import { DRAWN, DRAWN_FONT } from "./palette";
import { TwoToneLine } from "./two-tone";

export interface CallMarksProps {
  readonly view: Viewport;
  readonly calls: readonly Call[];
  readonly openId: string | null;
  readonly placeOf: PlaceOfCall;
}

/** Where an indication is seen as the piece is turned: the middle of its line; null where it is not in sight or has no place. */
export type PlaceOfCall = (call: Call) => Place | null;

/** What the report says about what is in sight, drawn where it says it: a ring for a point, brackets for a stretch. */
export function CallMarks({ view, calls, openId, placeOf }: CallMarksProps) {
  return calls.map((call, index) => {
    const box = markBox(call, view, placeOf);
    return box && <CallMark key={call.id} call={call} number={index + 1} box={box} isOpen={call.id === openId} />;
  });
}

interface CallMarkProps {
  readonly call: Call;
  readonly number: number;
  readonly box: MarkBox;
  readonly isOpen: boolean;
}

function CallMark({ call, number, box, isOpen }: CallMarkProps) {
  const { left, right, top, half } = box;
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

interface MarkBox {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly half: number;
}

/** Screen box of a mark: never smaller than a fingertip can find. */
export function markBox(call: Call, view: Viewport, placeOf: PlaceOfCall): MarkBox | null {
  const place = placeOf(call);
  if (!place) return null;
  const { y } = place;
  const start = call.start ?? 0;
  const end = call.end ?? start;
  const { left, top } = toScreen(view, { x: Math.min(start, end), y });
  const right = toScreen(view, { x: Math.max(start, end), y }).left;
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
