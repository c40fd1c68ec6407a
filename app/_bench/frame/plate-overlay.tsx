"use client";
import { memo } from "react";
import type { Place, TrayPlacement, Viewport } from "@/lib/bench";
import type { Call } from "@/lib/report";
import { CallMarks, type PlaceOfCall } from "../overlay/call-marks";
import { CursorCross } from "../overlay/cursor-cross";
import { DatumRule } from "../overlay/datum-rule";
import { type Drawing, DrawingBand } from "../overlay/drawing-band";
import { GaugeMark } from "../overlay/gauge-mark";
import { Overlay } from "../overlay/overlay";

export interface PlateOverlayProps {
  readonly view: Viewport;
  readonly calls: readonly Call[];
  readonly openId: string | null;
  readonly placeOf: PlaceOfCall;
  readonly gauge: TrayPlacement | null;
  readonly drawing: Drawing | null;
  /** Null while a gauge is in the hand: its spot is marked. */
  readonly cursor: Place | null;
}

/** Scale, marks, gauge and cursor; the light may change without any of them being drawn again. */
export const PlateOverlay = memo(function PlateOverlay(props: PlateOverlayProps) {
  const { view, calls, openId, placeOf, gauge, drawing, cursor } = props;
  return (
    <Overlay view={view}>
      <DatumRule view={view} />
      <CallMarks view={view} calls={calls} openId={openId} placeOf={placeOf} />
      {gauge && <GaugeMark view={view} placement={gauge} />}
      {drawing && <DrawingBand view={view} drawing={drawing} />}
      {cursor && <CursorCross view={view} place={cursor} />}
    </Overlay>
  );
});
