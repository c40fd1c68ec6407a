"use client";
import { memo } from "react";
import type { Place, TrayPlacement, Viewport } from "@/lib/bench";
import type { Call } from "@/lib/report";
import type { Face } from "@/lib/weld";
import { CallMarks } from "../overlay/call-marks";
import { CursorCross } from "../overlay/cursor-cross";
import { DatumRule } from "../overlay/datum-rule";
import { type Drawing, DrawingBand } from "../overlay/drawing-band";
import { GaugeMark } from "../overlay/gauge-mark";
import { Overlay } from "../overlay/overlay";

export interface PlateOverlayProps {
  readonly view: Viewport;
  readonly face: Face;
  readonly calls: readonly Call[];
  readonly openId: string | null;
  readonly gauge: TrayPlacement | null;
  readonly drawing: Drawing | null;
  /** Null while a gauge is in the hand: its spot is marked. */
  readonly cursor: Place | null;
}

/** Scale, marks, gauge and cursor; the light may change without any of them being drawn again. */
export const PlateOverlay = memo(function PlateOverlay(props: PlateOverlayProps) {
  const { view, face, calls, openId, gauge, drawing, cursor } = props;
  return (
    <Overlay view={view}>
      <DatumRule view={view} face={face} />
      <CallMarks view={view} face={face} calls={calls} openId={openId} />
      {gauge && <GaugeMark view={view} face={face} placement={gauge} />}
      {drawing && <DrawingBand view={view} face={face} drawing={drawing} />}
      {cursor && <CursorCross view={view} face={face} place={cursor} />}
    </Overlay>
  );
});
