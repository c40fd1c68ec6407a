"use client";
import { type Viewport, zoomed } from "@/lib/bench";
import { type Aspect, faceOf } from "@/lib/weld";
import { ASPECT_NAMES } from "../report/call-words";

export interface ViewButtonsProps {
  readonly aspect: Aspect;
  readonly isLensHeld: boolean;
  readonly areOutlinesShown: boolean;
  readonly onTurn: () => void;
  readonly onWhole: () => void;
  readonly onLens: () => void;
  readonly onOutlines: () => void;
  readonly changeView: (change: (view: Viewport) => Viewport) => void;
}

/** The few things to do with a plate that is only looked at. */
export function ViewButtons(props: ViewButtonsProps) {
  const zoom = (factor: number) =>
    props.changeView((view) => zoomed(view, factor, { left: view.width / 2, top: view.height / 2 }));
  const button =
    "h-11 rounded border border-bench-line bg-bench/90 px-3 text-bench-text text-sm hover:bg-bench-2 aria-pressed:border-lamp aria-pressed:text-lamp";
  return (
    <div
      className="absolute top-2 left-2 z-20 flex cursor-default flex-wrap items-center gap-1"
      onPointerDown={(event) => event.stopPropagation()}
    >
      <span className="rounded bg-bench/90 px-3 py-2.5 font-semibold text-bench-text text-sm">
        {ASPECT_NAMES[props.aspect]}
      </span>
      <button type="button" className={button} onClick={props.onTurn}>
        {faceOf(props.aspect) === "fillet" ? "Turn" : "Turn over"}
      </button>
      <button type="button" className={button} onClick={() => zoom(1.5)} aria-label="Closer">
        +
      </button>
      <button type="button" className={button} onClick={() => zoom(1 / 1.5)} aria-label="Further away">
        −
      </button>
      <button type="button" className={button} onClick={props.onWhole}>
        Whole
      </button>
      <button type="button" className={button} aria-pressed={props.isLensHeld} onClick={props.onLens}>
        Lens
      </button>
      <button type="button" className={button} aria-pressed={props.areOutlinesShown} onClick={props.onOutlines}>
        Outlines
      </button>
    </div>
  );
}
