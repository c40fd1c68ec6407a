"use client";
import { type RefObject, useCallback, useEffect, useRef } from "react";
import { seenFrom } from "@/lib/bench";
import type { Looking } from "./use-looking";

const HALF_TURN_MS = 280;
/** So long the other face may take for its first picture before the turn goes on without it, ms. */
const PATIENCE_MS = 1500;

/** Plays the turn of the plate about its long axis; with reduced motion the other face just appears. */
export function useTurn(layer: RefObject<HTMLElement | null>, looking: Looking) {
  const { turningTo, aspect } = looking;
  const newest = useRef(looking);
  newest.current = looking;
  const onFaceShown = useRef<(() => void) | null>(null);

  useEffect(() => {
    const element = layer.current;
    if (!turningTo || turningTo === newest.current.aspect || !element) return;
    let isCancelled = false;
    const play = async () => {
      const isCalm = window.matchMedia("(prefers-reduced-motion: reduce)").matches;
      if (!isCalm) await swing(element, newest.current, 0, 90);
      if (isCancelled) return;
      const shown = new Promise<void>((resolve) => {
        onFaceShown.current = resolve;
        setTimeout(resolve, PATIENCE_MS);
      });
      element.style.visibility = "hidden";
      newest.current.showTurned();
      await shown;
      element.style.visibility = "";
      if (isCancelled) return;
      if (!isCalm) await swing(element, newest.current, -90, 0);
      newest.current.endTurn();
    };
    void play();
    return () => {
      isCancelled = true;
      element.style.visibility = "";
    };
  }, [turningTo, layer]);

  useEffect(() => {
    if (turningTo === aspect && !onFaceShown.current) newest.current.endTurn();
  }, [turningTo, aspect]);

  return useCallback(() => {
    onFaceShown.current?.();
    onFaceShown.current = null;
  }, []);
}

/** Turns the layer about the weld's own line on the screen; only the plate is seen turning, not the bench. */
async function swing(element: HTMLElement, { view }: Looking, from: number, to: number) {
  if (!view) return;
  const middle = view.height / 2 + view.up * view.scale;
  const left = view.width / 2 - view.x * view.scale;
  const { length, bottom, top } = seenFrom(view.aspect);
  const inset = [
    middle - top * view.scale,
    view.width - left - length * view.scale,
    view.height - middle + bottom * view.scale,
    left,
  ]
    .map((edge) => `${Math.max(0, edge)}px`)
    .join(" ");
  element.style.clipPath = `inset(${inset})`;
  element.style.transformOrigin = `50% ${middle}px`;
  const turnAt = (angle: number) => ({
    transform: `perspective(1600px) rotateX(${angle}deg)`,
    filter: `brightness(${1 - Math.abs(angle) / 140})`,
  });
  await element.animate([turnAt(from), turnAt(to)], {
    duration: HALF_TURN_MS,
    easing: from === 0 ? "cubic-bezier(.5,0,.9,.6)" : "cubic-bezier(.1,.4,.5,1)",
    fill: "both",
  }).finished;
  if (to === 0) {
    for (const animation of element.getAnimations()) animation.cancel();
    element.style.clipPath = "";
  }
}
