"use client";
import { useCallback, useMemo, useState } from "react";
import {
  centredOn,
  FIRST_TORCH,
  type HeightAt,
  lampPosition,
  onFace,
  type Place,
  resized,
  seenPlace,
  type Torch,
  turnedTo,
  type Viewport,
  wholePlate,
} from "@/lib/bench";
import { type Aspect, faceOf, upOnScreen } from "@/lib/weld";

/** How the learner looks at the piece: from where, how close, how it is turned, under which light. */
export interface Looking {
  /** Null until the size of the screen is known. */
  readonly view: Viewport | null;
  readonly aspect: Aspect;
  readonly torch: Torch;
  readonly lamp: readonly [number, number, number];
  /** The aspect that is coming up while the piece is being turned. */
  readonly turningTo: Aspect | null;
  changeView(change: (view: Viewport) => Viewport): void;
  setSize(width: number, height: number): void;
  setTorch(torch: Torch): void;
  turnTo(aspect: Aspect): void;
  /** Called half-way through the turn and at its end. */
  showTurned(): void;
  endTurn(): void;
  /** Goes to a place, turning the piece where it is seen from another aspect. */
  goTo(aspect: Aspect, place: Place, scale?: number): void;
}

/** What is to be in the middle once the piece is turned. */
interface Turn {
  readonly to: Aspect;
  readonly middle: Place;
  readonly scale: number | undefined;
}

/** The place that lies in the middle after a turn: the same one of the piece, or the root corner where that is hidden. */
export function middleAfterTurn(view: Viewport, to: Aspect, heightsOf: (aspect: Aspect) => HeightAt): Place {
  const middle = { x: view.x, y: view.up * upOnScreen(view.aspect) };
  if (faceOf(to) !== faceOf(view.aspect)) return middle;
  const place = onFace(view.aspect, middle, heightsOf(view.aspect));
  return seenPlace(to, place, heightsOf(faceOf(to))) ?? { x: view.x, y: 0 };
}

export function useLooking(firstAspect: Aspect, heightsOf: (aspect: Aspect) => HeightAt): Looking {
  const [view, setView] = useState<Viewport | null>(null);
  const [turn, setTurn] = useState<Turn | null>(null);
  const [torch, setTorch] = useState<Torch>(FIRST_TORCH);
  const aspect = view?.aspect ?? firstAspect;

  const changeView = useCallback((change: (view: Viewport) => Viewport) => {
    setView((now) => (now ? change(now) : now));
  }, []);
  const setSize = useCallback(
    (width: number, height: number) => {
      setView((now) => (now ? resized(now, width, height) : wholePlate({ aspect: firstAspect, width, height })));
    },
    [firstAspect],
  );
  const turnTo = useCallback(
    (to: Aspect) => {
      if (view && to !== view.aspect) setTurn({ to, middle: middleAfterTurn(view, to, heightsOf), scale: undefined });
    },
    [view, heightsOf],
  );
  const showTurned = useCallback(() => {
    if (!turn) return;
    setView((now) => {
      if (!now || now.aspect === turn.to) return now;
      return turn.scale === undefined
        ? turnedTo(now, turn.to, turn.middle)
        : centredOn({ ...now, aspect: turn.to }, turn.middle, turn.scale);
    });
  }, [turn]);
  const endTurn = useCallback(() => setTurn(null), []);
  const goTo = useCallback(
    (to: Aspect, place: Place, scale?: number) => {
      if (to === aspect) return setView((now) => now && centredOn(now, place, scale));
      setTurn({ to, middle: place, scale });
    },
    [aspect],
  );
  const lamp = useMemo(
    () => lampPosition(torch, view ?? { aspect: firstAspect, x: 150, up: 0 }),
    [torch, view, firstAspect],
  );

  return {
    view,
    aspect,
    torch,
    lamp,
    turningTo: turn?.to ?? null,
    changeView,
    setSize,
    setTorch,
    turnTo,
    showTurned,
    endTurn,
    goTo,
  };
}
