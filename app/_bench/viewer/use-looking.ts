"use client";
import { useCallback, useMemo, useState } from "react";
import {
  centredOn,
  FIRST_TORCH,
  lampPosition,
  type Place,
  resized,
  type Torch,
  turnedOver,
  type Viewport,
  wholePlate,
} from "@/lib/bench";
import type { Face } from "@/lib/weld";

/** How the learner looks at the plate: from where, how close, which face, under which light. */
export interface Looking {
  /** Null until the size of the screen is known. */
  readonly view: Viewport | null;
  readonly face: Face;
  readonly torch: Torch;
  readonly lamp: readonly [number, number, number];
  /** The face that is coming up while the plate is being turned. */
  readonly turningTo: Face | null;
  changeView(change: (view: Viewport) => Viewport): void;
  setSize(width: number, height: number): void;
  setTorch(torch: Torch): void;
  turnPlate(): void;
  /** Called half-way through the turn and at its end. */
  showOtherFace(): void;
  endTurn(): void;
  /** Goes to a place, turning the plate where it lies on the other face. */
  goTo(face: Face, place: Place, scale?: number): void;
}

export function useLooking(firstFace: Face): Looking {
  const [view, setView] = useState<Viewport | null>(null);
  const [face, setFace] = useState<Face>(firstFace);
  const [turningTo, setTurningTo] = useState<Face | null>(null);
  const [torch, setTorch] = useState<Torch>(FIRST_TORCH);

  const changeView = useCallback((change: (view: Viewport) => Viewport) => {
    setView((now) => (now ? change(now) : now));
  }, []);
  const setSize = useCallback((width: number, height: number) => {
    setView((now) => (now ? resized(now, width, height) : wholePlate(width, height)));
  }, []);
  const turnPlate = useCallback(() => setTurningTo(face === "cap" ? "root" : "cap"), [face]);
  const showOtherFace = useCallback(() => {
    if (!turningTo || turningTo === face) return;
    setFace(turningTo);
    setView((now) => now && turnedOver(now));
  }, [face, turningTo]);
  const endTurn = useCallback(() => setTurningTo(null), []);
  const goTo = useCallback(
    (target: Face, place: Place, scale?: number) => {
      // turning keeps the same stretch of the same plate in sight, so the place can be brought up before it
      setView((now) => now && centredOn(now, face, place, scale));
      if (target !== face) setTurningTo(target);
    },
    [face],
  );
  const lamp = useMemo(() => lampPosition(torch, view ?? { x: 150, up: 0 }), [torch, view]);

  return {
    view,
    face,
    torch,
    lamp,
    turningTo,
    changeView,
    setSize,
    setTorch,
    turnPlate,
    showOtherFace,
    endTurn,
    goTo,
  };
}
