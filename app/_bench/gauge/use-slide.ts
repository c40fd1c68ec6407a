"use client";
import { type KeyboardEvent, type PointerEvent, type RefObject, useEffect, useRef } from "react";

/** mm of the scale for a pixel of a drag, and for a notch of the wheel. */
const PER_PIXEL = 0.1;
const PER_NOTCH = 0.1;
const FINE = 0.25;
const NOTCH: Readonly<Record<number, number>> = { 0: 100, 1: 3, 2: 1 };

/** mm for a press of a key. */
const KEY_STEPS: Readonly<Record<string, number>> = {
  ArrowDown: 0.2,
  ArrowUp: -0.2,
  PageDown: 2,
  PageUp: -2,
  End: Number.POSITIVE_INFINITY,
  Home: Number.NEGATIVE_INFINITY,
};
const CAREFUL_STEP = 0.02;

/** Slides the moving part: drag (finely on the enlarged scale), wheel or keys; down is towards the metal. `push` takes mm towards it. */
export function useSlide(area: RefObject<HTMLElement | null>, push: (by: number) => void) {
  const drag = useRef<{ top: number; isFine: boolean } | null>(null);

  useEffect(() => {
    const element = area.current;
    if (!element) return;
    const onWheel = (event: WheelEvent) => {
      event.preventDefault();
      push((event.deltaY / (NOTCH[event.deltaMode] ?? 1)) * PER_NOTCH * (event.shiftKey ? FINE : 1));
    };
    element.addEventListener("wheel", onWheel, { passive: false });
    return () => element.removeEventListener("wheel", onWheel);
  }, [area, push]);

  return {
    onPointerDown: (event: PointerEvent) => {
      if (event.button !== 0) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      const isOnScale = event.target instanceof Element && event.target.closest("[data-reading-lens]") !== null;
      drag.current = { top: event.clientY, isFine: isOnScale };
    },
    onPointerMove: (event: PointerEvent) => {
      if (!drag.current) return;
      const { top, isFine } = drag.current;
      push((event.clientY - top) * PER_PIXEL * (event.shiftKey || isFine ? FINE : 1));
      drag.current = { top: event.clientY, isFine };
    },
    onPointerUp: () => {
      drag.current = null;
    },
    onPointerCancel: () => {
      drag.current = null;
    },
    onKeyDown: (event: KeyboardEvent) => {
      const step = KEY_STEPS[event.key];
      if (step === undefined || event.ctrlKey || event.metaKey) return;
      event.preventDefault();
      const by = event.altKey ? Math.sign(step) * CAREFUL_STEP : event.shiftKey ? step * 10 : step;
      push(by);
    },
  };
}
