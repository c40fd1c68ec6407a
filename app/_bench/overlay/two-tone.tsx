"use client";
import type { LineConfig } from "konva/lib/shapes/Line";
import { Line } from "react-konva";
import { DRAWN } from "./palette";

/** A line drawn twice: wide and dark below, narrow and light above. */
export function TwoToneLine({ stroke = DRAWN.light, strokeWidth = 2, dash, ...line }: Omit<LineConfig, "ref">) {
  return (
    <>
      <Line {...line} stroke={DRAWN.dark} strokeWidth={(strokeWidth as number) + 2.5} opacity={0.8} />
      <Line {...line} stroke={stroke} strokeWidth={strokeWidth} dash={dash} />
    </>
  );
}
