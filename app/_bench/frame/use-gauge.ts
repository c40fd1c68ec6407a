"use client";
import { type Dispatch, useMemo, useReducer, useRef } from "react";
import {
  type GaugeOut,
  isStanding,
  type Measuring,
  type MeasuringEvent,
  measure,
  NOTHING_OUT,
  type Place,
  type ScreenPoint,
  toPlace,
  toScreen,
  type Viewport,
} from "@/lib/bench";
import {
  type BladeTrial,
  drawnBack,
  type Heights,
  heightsOfFace,
  nearerBy,
  type Refusal,
  type SeatingRandom,
  type Standing,
  setDown,
  slideTo,
  tryBlade,
} from "@/lib/gauges";
import { randomStream } from "@/lib/random";
import { type Aspect, upOnScreen } from "@/lib/weld";
import { partAt, planOf } from "../overlay/plan-of-gauge";
import type { FaceHeights } from "../viewer/protocol";
import { withGrids } from "../viewer/with-grids";
import { useStable } from "./use-stable";

export interface GaugeHandling {
  /** The gauge on what is in sight, or null while none is out or it stands on the piece as it was turned before. */
  readonly out: GaugeOut | null;
  readonly heights: Heights | null;
  /** How it stands on the metal; null for what does not stand, and until the plate is here. */
  readonly standing: Standing | Refusal | null;
  /** How a fillet blade that is out compares with the weld; null for any other gauge. */
  readonly trial: BladeTrial | Refusal | null;
  /** Where on its scale the moving part stands, mm. */
  readonly position: number;
  readonly send: Dispatch<MeasuringEvent>;
  /** Pushes the moving part so many mm towards the metal, or away; it stops at the metal. */
  readonly push: (by: number) => void;
  /** Turns it by degrees, counter-clockwise as seen on the screen. */
  readonly turnOnScreen: (by: number) => void;
  /** False where a drag from here has nothing to do with the gauge. */
  readonly grab: (at: ScreenPoint, view: Viewport) => boolean;
  readonly drag: (at: ScreenPoint, view: Viewport) => void;
}

type Grip =
  | { readonly kind: "turn" }
  | { readonly kind: "move"; readonly left: number; readonly top: number }
  | { readonly kind: "lay"; readonly from: Place };

/** Between the plates of a fillet joint, degrees. */
const SQUARE = 90;

/** The gauge that is out, on the metal of the face in sight; `underneath` is the face on the other side, once it is here. */
export function useGauge(
  practiceId: string,
  aspect: Aspect,
  surface: FaceHeights | null,
  underneath: FaceHeights | null,
): GaugeHandling {
  const heights = useMemo(() => {
    if (!surface) return null;
    const { facesApart } = surface;
    const other = underneath && facesApart !== null && (aspect === "cap" || aspect === "root");
    const below = other ? { surface: withGrids(aspect === "cap" ? "root" : "cap", underneath), facesApart } : null;
    return { ...heightsOfFace(withGrids(aspect, surface), below), corner: aspect === "fillet" ? SQUARE : null };
  }, [aspect, surface, underneath]);
  // the stream belongs to the practice: it tells nothing of what the specimen was made from
  const seating = useMemo(() => randomStream(`seating/${practiceId}/${aspect}`), [practiceId, aspect]);
  return useGaugeOn(aspect, heights, seating);
}

/** The gauge that is out on any metal; `first` is what is out at the beginning. */
export function useGaugeOn(
  aspect: Aspect,
  heights: Heights | null,
  seating: SeatingRandom,
  first: Measuring = NOTHING_OUT,
): GaugeHandling {
  const [measuring, send] = useReducer(measure, first);
  const grip = useRef<Grip | null>(null);
  const out = measuring.out?.aspect === aspect ? measuring.out : null;
  const placement = out?.placement ?? null;

  const standing = useMemo(
    () => (placement && isStanding(placement) && heights ? setDown(heights, placement, seating) : null),
    [placement, heights, seating],
  );
  const trial = useMemo(
    () => (placement?.kind === "fillet-blades" && heights ? tryBlade(heights, placement) : null),
    [placement, heights],
  );
  const position = positionOf(out, standing);

  // several pushes may come between two pictures
  const pushedTo = useRef(position);
  pushedTo.current = position;
  const push = useStable((by: number) => {
    if (!standing?.ok) return;
    pushedTo.current = slideTo(standing, nearerBy(standing, pushedTo.current, by));
    send({ kind: "slide", to: pushedTo.current });
  });
  const turnOnScreen = (by: number) => {
    if (placement) send({ kind: "turn", to: placement.turn + by * upOnScreen(aspect) });
  };

  const grab = (at: ScreenPoint, view: Viewport): boolean => {
    grip.current = null;
    if (!placement) return false;
    const part = partAt(planOf(view, placement), at);
    const spot = toScreen(view, placement);
    if (part === "knob") grip.current = { kind: "turn" };
    else if (part) grip.current = { kind: "move", left: spot.left - at.left, top: spot.top - at.top };
    else if (placement.kind === "steel-rule") grip.current = { kind: "lay", from: toPlace(view, at) };
    return grip.current !== null;
  };
  const drag = (at: ScreenPoint, view: Viewport) => {
    const held = grip.current;
    if (!held || !placement) return;
    const to = toPlace(view, at);
    switch (held.kind) {
      case "turn": {
        const angle = (Math.atan2(to.y - placement.y, to.x - placement.x) * 180) / Math.PI;
        return send({ kind: "turn", to: Math.round(angle) });
      }
      case "move": {
        const place = toPlace(view, { left: at.left + held.left, top: at.top + held.top });
        return send({ kind: "move", place });
      }
      case "lay":
        return send({ kind: "lay", from: held.from, towards: to });
    }
  };

  return { out, heights, standing, trial, position, send, push, turnOnScreen, grab, drag };
}

/** Drawn back until it is slid; where the gauge cannot be read it stays there. */
function positionOf(out: GaugeOut | null, standing: Standing | Refusal | null): number {
  if (!out || !isStanding(out.placement)) return 0;
  if (!standing?.ok || out.slidTo === null) return drawnBack({ placement: out.placement });
  return slideTo(standing, out.slidTo);
}
