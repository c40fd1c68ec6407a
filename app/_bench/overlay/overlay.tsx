"use client";
import type { ReactNode } from "react";
import { Layer, Stage } from "react-konva";
import type { Viewport } from "@/lib/bench";

/** What is drawn over the picture in the same view. It takes no pointer: the bench below does. */
export function Overlay({ view, children }: { view: Viewport; children: ReactNode }) {
  return (
    <div className="pointer-events-none absolute inset-0" aria-hidden="true">
      <Stage width={view.width} height={view.height} listening={false}>
        <Layer listening={false}>{children}</Layer>
      </Stage>
    </div>
  );
}
