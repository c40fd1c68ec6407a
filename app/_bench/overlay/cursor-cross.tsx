"use client";
import { Group, Line } from "react-konva";
import { type Place, toScreen, type Viewport } from "@/lib/bench";
import { DRAWN } from "./palette";

/** Where the keys are: a cross with an open middle, so that it never covers what it points at. */
export function CursorCross({ view, place }: { view: Viewport; place: Place }) {
  const { left, top } = toScreen(view, place);
  const arms = [
    [-15, 0, -5, 0],
    [5, 0, 15, 0],
    [0, -15, 0, -5],
    [0, 5, 0, 15],
  ];
  return (
    <Group x={left} y={top}>
      {arms.map((points) => (
        <Line key={points.join()} points={points} stroke={DRAWN.dark} strokeWidth={4} />
      ))}
      {arms.map((points) => (
        <Line key={points.join()} points={points} stroke={DRAWN.light} strokeWidth={1.6} />
      ))}
    </Group>
  );
}
