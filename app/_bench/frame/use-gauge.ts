"use client";
import { useCallback, useMemo, useRef, useState } from "react";
import { type Place, type ScreenPoint, toPlace, toScreen, type Viewport } from "@/lib/bench";
import { adjusted, BRIDGE_GAUGE, type BridgePlacement, type BridgeReading, readBridgeGauge } from "@/lib/gauges";
import { type Face, upOnScreen } from "@/lib/weld";
import { knobOf } from "../overlay/gauge-mark";
import type { FaceHeights } from "../viewer/protocol";
import { withGrids } from "../viewer/with-grids";

export interface GaugeHandling {
  /** Where it stands on the face in sight, or null while it is put away or stands on the other face. */
  readonly placement: BridgePlacement | null;
  readonly reading: BridgeReading | null;
  setPlacement(placement: BridgePlacement): void;
  /** Sets it down with its tip at a place; its adjustments stay as they were. */
  setDown(place: Place): void;
  turn(by: number): void;
  putAway(): void;
  grab(at: ScreenPoint, view: Viewport): void;
  drag(at: ScreenPoint, view: Viewport): void;
}

/** A pointer this close to the knob turns the gauge, px; closer than that to its tip moves it. */
const GRIP_REACH = 22;

type Grip = { kind: "turn" } | { kind: "move"; left: number; top: number };

export function useGauge(face: Face, heights: FaceHeights | null): GaugeHandling {
  const [standing, setStanding] = useState<{ face: Face; placement: BridgePlacement } | null>(null);
  const grip = useRef<Grip | null>(null);
  const placement = standing?.face === face ? standing.placement : null;

  const reading = useMemo(
    () => (placement && heights ? readBridgeGauge(withGrids(heights), placement) : null),
    [placement, heights],
  );

  const setPlacement = useCallback((next: BridgePlacement) => setStanding({ face, placement: adjusted(next) }), [face]);
  const setDown = useCallback(
    (place: Place) =>
      setStanding((now) => {
        // on the side of the weld it is set down on, it reaches outward over the plate
        const outward = place.y < 0 ? 270 : 90;
        const kept = now?.placement ?? {
          offset: BRIDGE_GAUGE.offset.first,
          spacing: BRIDGE_GAUGE.spacing.first,
          turn: outward,
        };
        return { face, placement: adjusted({ ...kept, ...place }) };
      }),
    [face],
  );
  const turn = (by: number) => placement && setPlacement({ ...placement, turn: placement.turn + by });

  const grab = (at: ScreenPoint, view: Viewport) => {
    const tip = placement && toScreen(view, face, placement);
    const knob = placement && knobOf(view, face, placement);
    if (knob && Math.hypot(knob.left - at.left, knob.top - at.top) < GRIP_REACH) {
      grip.current = { kind: "turn" };
    } else if (tip && isOnBar(tip, knob!, at)) {
      grip.current = { kind: "move", left: tip.left - at.left, top: tip.top - at.top };
    } else {
      grip.current = { kind: "move", left: 0, top: 0 };
      setDown(toPlace(view, face, at));
    }
  };
  const drag = (at: ScreenPoint, view: Viewport) => {
    if (!grip.current || !placement) return;
    if (grip.current.kind === "move") {
      const to = { left: at.left + grip.current.left, top: at.top + grip.current.top };
      return setPlacement({ ...placement, ...toPlace(view, face, to) });
    }
    const to = toPlace(view, face, at);
    const angle = (Math.atan2(to.y - placement.y, to.x - placement.x) * 180) / Math.PI;
    setPlacement({ ...placement, turn: Math.round(angle / 5) * 5 });
  };

  return { placement, reading, setPlacement, setDown, turn, putAway: () => setStanding(null), grab, drag };
}

/** Within reach of the line from tip to knob. */
function isOnBar(tip: ScreenPoint, knob: ScreenPoint, at: ScreenPoint): boolean {
  const along = { left: knob.left - tip.left, top: knob.top - tip.top };
  const square = along.left ** 2 + along.top ** 2 || 1;
  const share = ((at.left - tip.left) * along.left + (at.top - tip.top) * along.top) / square;
  const bounded = Math.max(0, Math.min(1, share));
  const aside = Math.hypot(at.left - tip.left - along.left * bounded, at.top - tip.top - along.top * bounded);
  return aside < GRIP_REACH;
}

/** Direction in which a turn looks counter-clockwise on the screen: the root face is seen mirrored. */
export const screenTurn = (face: Face, by: number): number => by * upOnScreen(face);
