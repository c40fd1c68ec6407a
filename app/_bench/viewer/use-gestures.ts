"use client";
import { type PointerEvent, type RefObject, useEffect, useRef } from "react";
import { panned, type ScreenPoint, type Viewport, zoomed } from "@/lib/bench";

/** What a drag with the chosen tool means to the owner of the tool. */
export interface DragHandlers {
  /** Gives back false where the tool has no use for the drag: then it moves the plate. */
  readonly onDragStart?: (at: ScreenPoint) => boolean;
  readonly onDragMove?: (at: ScreenPoint) => void;
  readonly onDragEnd?: (at: ScreenPoint) => void;
  readonly onDragCancel?: () => void;
  readonly onTap?: (at: ScreenPoint) => void;
  readonly onHover?: (at: ScreenPoint | null) => void;
}

interface Grip {
  readonly kind: "pan" | "tool" | "pinch";
  readonly start: ScreenPoint;
  hasMoved: boolean;
}

/** Further than this from where it went down, a pointer drags and does not tap, px. */
const TAP_REACH = 6;
const WHEEL_RATE = 0.0016;

/** Wheel, pinch, two fingers, middle or right button and the space bar move the view; anything else goes to the tool. */
export function useGestures(
  area: RefObject<HTMLElement | null>,
  changeView: (change: (view: Viewport) => Viewport) => void,
  handlers: DragHandlers,
) {
  const pointers = useRef(new Map<number, ScreenPoint>());
  const grip = useRef<Grip | null>(null);
  const isSpaceDown = useRef(false);

  const pointOf = (event: { clientX: number; clientY: number }): ScreenPoint => {
    const box = area.current!.getBoundingClientRect();
    return { left: event.clientX - box.left, top: event.clientY - box.top };
  };

  useEffect(() => {
    const element = area.current;
    if (!element) return;
    const onWheel = (event: WheelEvent) => {
      event.preventDefault();
      const box = element.getBoundingClientRect();
      const at = { left: event.clientX - box.left, top: event.clientY - box.top };
      const unit = event.deltaMode === 1 ? 30 : 1;
      if (event.shiftKey) return changeView((view) => panned(view, -(event.deltaY + event.deltaX) * unit, 0));
      const rate = event.ctrlKey ? WHEEL_RATE * 5 : WHEEL_RATE;
      changeView((view) => zoomed(view, Math.exp(-event.deltaY * unit * rate), at));
    };
    const onKey = (event: KeyboardEvent) => {
      if (event.code === "Space") isSpaceDown.current = event.type === "keydown";
    };
    element.addEventListener("wheel", onWheel, { passive: false });
    window.addEventListener("keydown", onKey);
    window.addEventListener("keyup", onKey);
    return () => {
      element.removeEventListener("wheel", onWheel);
      window.removeEventListener("keydown", onKey);
      window.removeEventListener("keyup", onKey);
    };
  }, [area, changeView]);

  const onPointerDown = (event: PointerEvent<HTMLElement>) => {
    const at = pointOf(event);
    event.currentTarget.setPointerCapture(event.pointerId);
    pointers.current.set(event.pointerId, at);
    if (pointers.current.size === 2) {
      if (grip.current?.kind === "tool") handlers.onDragCancel?.();
      grip.current = { kind: "pinch", start: at, hasMoved: true };
      return;
    }
    const isPanning = event.button !== 0 || isSpaceDown.current || !handlers.onDragStart?.(at);
    grip.current = { kind: isPanning ? "pan" : "tool", start: at, hasMoved: event.button !== 0 };
  };

  const onPointerMove = (event: PointerEvent<HTMLElement>) => {
    const at = pointOf(event);
    if (event.pointerType !== "touch") handlers.onHover?.(at);
    const before = pointers.current.get(event.pointerId);
    if (!before || !grip.current) return;
    if (grip.current.kind === "pinch") pinch(event.pointerId, before, at);
    pointers.current.set(event.pointerId, at);
    if (Math.hypot(at.left - grip.current.start.left, at.top - grip.current.start.top) > TAP_REACH) {
      grip.current.hasMoved = true;
    }
    if (!grip.current.hasMoved) return;
    if (grip.current.kind === "pan") {
      changeView((view) => panned(view, at.left - before.left, at.top - before.top));
    } else if (grip.current.kind === "tool") handlers.onDragMove?.(at);
  };

  /** The other finger stays where it is: zoom by the change of distance, shift by half of the movement. */
  const pinch = (id: number, before: ScreenPoint, at: ScreenPoint) => {
    const other = [...pointers.current].find(([key]) => key !== id)?.[1];
    if (!other) return;
    const apart = (p: ScreenPoint) => Math.hypot(p.left - other.left, p.top - other.top);
    const middle = { left: (at.left + other.left) / 2, top: (at.top + other.top) / 2 };
    const factor = apart(at) / Math.max(1, apart(before));
    changeView((view) => {
      const shifted = panned(view, (at.left - before.left) / 2, (at.top - before.top) / 2);
      return zoomed(shifted, factor, middle);
    });
  };

  const onPointerUp = (event: PointerEvent<HTMLElement>) => {
    const at = pointOf(event);
    const held = grip.current;
    pointers.current.delete(event.pointerId);
    if (pointers.current.size > 0 || !held) return;
    grip.current = null;
    if (held.kind === "tool") handlers.onDragEnd?.(at);
    if (!held.hasMoved && held.kind !== "pinch") handlers.onTap?.(at);
  };

  const onPointerCancel = (event: PointerEvent<HTMLElement>) => {
    pointers.current.delete(event.pointerId);
    if (grip.current?.kind === "tool") handlers.onDragCancel?.();
    grip.current = null;
  };

  return {
    onPointerDown,
    onPointerMove,
    onPointerUp,
    onPointerCancel,
    onPointerLeave: () => handlers.onHover?.(null),
    onContextMenu: (event: { preventDefault(): void }) => event.preventDefault(),
  };
}
