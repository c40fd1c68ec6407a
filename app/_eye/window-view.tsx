"use client";
import {
  type KeyboardEvent,
  type PointerEvent,
  type ReactNode,
  useCallback,
  useLayoutEffect,
  useRef,
  useState,
  useSyncExternalStore,
} from "react";
import { carryTorch, lampPosition, type ScreenPoint, type Torch, torchOnScreen, type Viewport } from "@/lib/bench";
import { type AskedWindow, WINDOW_MARGIN } from "@/lib/eye";
import { Picture } from "../_bench/viewer/picture";
import type { SpecimenLink, SpecimenState } from "../_bench/viewer/specimen-link";
import { keyedTorch, TorchHandle } from "../_bench/viewer/torch";
import { type ScaleKind, WindowScale } from "./window-scale";

export interface WindowViewProps {
  readonly window: AskedWindow;
  readonly link: SpecimenLink | null;
  readonly label: string;
  readonly torch: Torch;
  readonly onTorch: (torch: Torch) => void;
  /** Where marks are set on the metal, a drag is for them, and the torch is carried by itself. */
  readonly isMarkedOn?: boolean;
  readonly scale: ScaleKind;
  readonly onPainted?: () => void;
  /** Drawn over the metal, in px of the view. */
  readonly children?: (view: Viewport) => ReactNode;
}

const NOTHING_YET: SpecimenState = { aspects: {}, means: null, brokenBecause: null };
const never = () => () => {};

/** A window on a weld under the learner's torch. The torch is carried by a drag anywhere on it, or by arrow keys. */
export function WindowView(props: WindowViewProps) {
  const { window: shown, link, torch, onTorch, isMarkedOn = false, onPainted } = props;
  const area = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState({ width: 0, height: 0 });
  const [isPainted, setIsPainted] = useState(false);
  const grip = useRef<ScreenPoint | null>(null);

  useLayoutEffect(() => {
    const element = area.current;
    if (!element) return;
    const measure = () => setSize({ width: element.clientWidth, height: element.clientHeight });
    measure();
    const watcher = new ResizeObserver(measure);
    watcher.observe(element);
    return () => watcher.disconnect();
  }, []);

  const view = viewOf(shown, size);
  const onFirstFrame = useCallback(() => {
    setIsPainted(true);
    onPainted?.();
  }, [onPainted]);
  const onSettled = useCallback((isSettled: boolean) => {
    if (area.current) area.current.dataset.settled = String(isSettled);
  }, []);

  const pointOf = (event: PointerEvent): ScreenPoint => {
    const box = event.currentTarget.getBoundingClientRect();
    return { left: event.clientX - box.left, top: event.clientY - box.top };
  };
  const onPointerDown = (event: PointerEvent<HTMLDivElement>) => {
    if (isMarkedOn || event.button !== 0 || !view) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const at = pointOf(event);
    const held = torchOnScreen(torch, view);
    grip.current = { left: at.left - held.left, top: at.top - held.top };
  };
  const onPointerMove = (event: PointerEvent<HTMLDivElement>) => {
    if (!grip.current || !view) return;
    const at = pointOf(event);
    onTorch(carryTorch(view, { left: at.left - grip.current.left, top: at.top - grip.current.top }));
  };
  const letGo = () => {
    grip.current = null;
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const next = event.target === area.current ? keyedTorch(torch, event.key) : null;
    if (!next) return;
    event.preventDefault();
    onTorch(next);
  };

  return (
    <div className="eye-frame">
      <div
        ref={area}
        data-window=""
        data-settled="false"
        data-painted={isPainted}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys carry the torch, as on the bench
        tabIndex={0}
        role="application"
        aria-label={props.label}
        className={`eye-window ${isMarkedOn ? "cursor-crosshair" : "cursor-grab active:cursor-grabbing"}`}
        style={{ aspectRatio: `${shown.length} / ${shown.width}` }}
        onPointerDown={onPointerDown}
        onPointerMove={onPointerMove}
        onPointerUp={letGo}
        onPointerCancel={letGo}
        onKeyDown={onKeyDown}
      >
        {link && view && (
          <Picture
            link={link}
            target="picture"
            view={view}
            lamp={lampPosition(torch, view)}
            onFirstFrame={onFirstFrame}
            onSettled={onSettled}
          />
        )}
        {view && props.children?.(view)}
        {view && <TorchHandle torch={torch} view={view} onChange={onTorch} />}
        <WindowNotice link={link} isPainted={isPainted} />
      </div>
      {view && <WindowScale kind={props.scale} width={view.width} length={shown.length} />}
    </div>
  );
}

/** The window fills the box it is in; the metal around it is sent for its light alone. */
function viewOf({ face, length }: AskedWindow, { width, height }: { width: number; height: number }): Viewport | null {
  if (width === 0 || height === 0) return null;
  return { aspect: face, width, height, x: WINDOW_MARGIN + length / 2, up: 0, scale: width / length };
}

/** What is going on while there is no picture, in words. */
function WindowNotice({ link, isPainted }: { readonly link: SpecimenLink | null; readonly isPainted: boolean }) {
  const state = useSyncExternalStore(link?.subscribe ?? never, link?.state ?? (() => NOTHING_YET), () => NOTHING_YET);
  const failed = Object.values(state.aspects).find(({ kind }) => kind === "failed");
  const reason = state.brokenBecause ?? (failed?.kind === "failed" ? failed.reason : null);
  if (reason === null && isPainted) return null;
  return (
    <p role="status" className="eye-notice">
      {reason === null
        ? "Laying the piece under the torch..."
        : `The window could not be shown (${reason}). Your answers are kept. Reload the page to try again.`}
    </p>
  );
}
