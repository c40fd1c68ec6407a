"use client";
import { type KeyboardEvent, type ReactNode, type Ref, useCallback, useEffect, useRef } from "react";
import type { Place, Viewport } from "@/lib/bench";
import { BenchNotice } from "./bench-notice";
import { Lens } from "./lens";
import { Picture } from "./picture";
import type { RelightTimings } from "./protocol";
import type { SpecimenLink, SpecimenState } from "./specimen-link";
import { TorchHandle } from "./torch";
import { type DragHandlers, useGestures } from "./use-gestures";
import type { Looking } from "./use-looking";
import { useTurn } from "./use-turn";

/** The element that holds the picture. Tests and the benchmark read `data-painted` and `data-settled` and call `measureRelight`. */
export interface SpecimenStageElement extends HTMLDivElement {
  measureRelight?: () => Promise<RelightTimings>;
}

export interface SpecimenStageProps {
  readonly link: SpecimenLink | null;
  readonly specimen: SpecimenState;
  readonly looking: Looking;
  readonly handlers: DragHandlers;
  readonly lensAt: Place | null;
  readonly cursorStyle?: string;
  readonly label: string;
  readonly onKeyDown?: (event: KeyboardEvent) => void;
  /** Drawn over the picture, in the same view. */
  readonly overlay?: (view: Viewport) => ReactNode;
  readonly children?: ReactNode;
  readonly ref?: Ref<HTMLDivElement>;
}

/** The bench with the plate on it: picture, torch, lens, and what the owner draws over it. */
export function SpecimenStage(props: SpecimenStageProps) {
  const { link, specimen, looking, handlers, lensAt, overlay, children } = props;
  const { view, aspect, lamp, torch } = looking;
  const area = useRef<SpecimenStageElement>(null);
  const layer = useRef<HTMLDivElement>(null);
  const gestures = useGestures(area, looking.changeView, handlers);
  const onTurned = useTurn(layer, looking);
  const { setSize } = looking;

  useEffect(() => {
    const element = area.current;
    if (!element) return;
    const measure = () => setSize(element.clientWidth, element.clientHeight);
    const watcher = new ResizeObserver(measure);
    watcher.observe(element);
    return () => watcher.disconnect();
  }, [setSize]);

  useEffect(() => {
    if (!area.current || !link || !view) return;
    area.current.measureRelight = () =>
      link.measure({
        target: "picture",
        view,
        pixelRatio: Math.min(2, window.devicePixelRatio || 1),
        lamp,
        isMoving: false,
        number: 0,
      });
  }, [link, view, lamp]);

  const onSettled = useCallback((isSettled: boolean) => {
    if (area.current) area.current.dataset.settled = String(isSettled);
  }, []);

  const onFirstFrame = useCallback(() => {
    if (area.current) area.current.dataset.painted = "true";
    onTurned();
  }, [onTurned]);

  const state = specimen.aspects[aspect];
  return (
    <div
      ref={(element) => {
        area.current = element;
        if (typeof props.ref === "function") props.ref(element);
        else if (props.ref) props.ref.current = element;
      }}
      data-specimen=""
      data-settled="false"
      data-aspect={aspect}
      data-means={specimen.means ?? ""}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys move the cursor here; the report table is the form that needs no picture
      tabIndex={0}
      role="application"
      aria-label={props.label}
      onKeyDown={props.onKeyDown}
      className="relative size-full touch-none select-none overflow-hidden bg-bench"
      style={{ cursor: props.cursorStyle }}
      {...gestures}
    >
      <div ref={layer} className="absolute inset-0">
        {link && view && (
          <Picture
            link={link}
            target="picture"
            view={view}
            lamp={lamp}
            onSettled={onSettled}
            onFirstFrame={onFirstFrame}
          />
        )}
      </div>
      {view && !looking.turningTo && overlay?.(view)}
      {link && view && lensAt && !looking.turningTo && <Lens link={link} view={view} lamp={lamp} place={lensAt} />}
      {view && <TorchHandle torch={torch} view={view} onChange={looking.setTorch} />}
      <BenchNotice state={state} brokenBecause={specimen.brokenBecause} />
      {children}
    </div>
  );
}
