"use client";
import { useCallback, useEffect, useLayoutEffect, useRef } from "react";
import { shiftBetween, type Viewport } from "@/lib/bench";
import type { Aspect } from "@/lib/weld";
import type { PaintRequest, PaintTarget } from "./protocol";
import type { Frame, SpecimenLink } from "./specimen-link";

/** After so long without a change the picture is painted at its best, ms. */
const REST_MS = 130;

export interface PictureProps {
  readonly link: SpecimenLink;
  readonly target: PaintTarget;
  readonly view: Viewport;
  readonly lamp: readonly [number, number, number];
  /** Called with false when something changed and with true when the finished picture of it is on the screen. */
  readonly onSettled?: (isSettled: boolean) => void;
  readonly onFirstFrame?: (aspect: Aspect) => void;
}

let requestNumber = 0;

/**
 * The newest picture of the specimen. While a new one is being painted the last one is shifted and scaled to where it
 * belongs, so that moving never waits for painting.
 */
export function Picture({ link, target, view, lamp, onSettled, onFirstFrame }: PictureProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const shown = useRef<Viewport | null>(null);
  const painted = useRef<{ number: number; isFinal: boolean } | null>(null);
  const wanted = useRef<PaintRequest | null>(null);
  const current = useRef({ view, onSettled, onFirstFrame });
  current.current = { view, onSettled, onFirstFrame };

  const place = useCallback(() => {
    if (!canvas.current || !shown.current) return;
    const { scale, left, top } = shiftBetween(shown.current, current.current.view);
    canvas.current.style.width = `${shown.current.width}px`;
    canvas.current.style.height = `${shown.current.height}px`;
    canvas.current.style.transform = `translate(${left}px, ${top}px) scale(${scale})`;
  }, []);

  useEffect(
    () =>
      link.onFrame(target, ({ request, bitmap, isFinal }: Frame) => {
        const isNews = request.view.aspect === current.current.view.aspect && canvas.current !== null;
        if (!isNews) return bitmap.close();
        canvas.current!.width = bitmap.width;
        canvas.current!.height = bitmap.height;
        canvas.current!.getContext("bitmaprenderer")!.transferFromImageBitmap(bitmap);
        canvas.current!.dataset.aspect = request.view.aspect;
        shown.current = request.view;
        painted.current = { number: request.number, isFinal };
        place();
        current.current.onFirstFrame?.(request.view.aspect);
        if (isFinal && request.number === wanted.current?.number) current.current.onSettled?.(true);
      }),
    [link, target, place],
  );

  useLayoutEffect(place);

  const { aspect, width, height, x, up, scale } = view;
  const [lampX, lampUp, lampHeight] = lamp;
  useEffect(() => {
    const request: PaintRequest = {
      target,
      view: { aspect, width, height, x, up, scale },
      pixelRatio: Math.min(2, window.devicePixelRatio || 1),
      lamp: [lampX, lampUp, lampHeight],
      isMoving: true,
      number: ++requestNumber,
    };
    wanted.current = request;
    current.current.onSettled?.(false);
    link.paint(request);
    const rest = setTimeout(() => {
      const last = painted.current;
      if (last?.number === request.number && last.isFinal) return;
      link.paint({ ...request, isMoving: false });
    }, REST_MS);
    return () => clearTimeout(rest);
  }, [link, target, aspect, width, height, x, up, scale, lampX, lampUp, lampHeight]);

  useEffect(() => () => link.forget(target), [link, target]);

  return <canvas ref={canvas} className="absolute left-0 top-0 block origin-top-left" />;
}
