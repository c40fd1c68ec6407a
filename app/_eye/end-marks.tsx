"use client";
import { type KeyboardEvent, type PointerEvent, useEffect, useRef } from "react";
import { DRAWN } from "@/app/_bench/overlay/palette";
import { stepOf, type Viewport } from "@/lib/bench";
import { roundTo } from "@/lib/math";

/** Where somebody says that it starts and ends, mm from the window's left edge. */
export interface Marks {
  readonly from: number;
  readonly to: number;
}

const WORDS = { from: "Start", to: "End" } as const;
type Mark = keyof Marks;

interface EndMarksProps {
  readonly view: Viewport;
  readonly length: number;
  readonly marks: Marks;
  /** Where it really starts and ends, once it is told. */
  readonly right: Marks | null;
  readonly onChange: (marks: Marks) => void;
  /** Id of the question. */
  readonly describedBy: string;
}

/** Two lines across the window that are dragged to the ends: by pointer and touch the nearer one comes, by keys the one in focus. */
export function EndMarks({ view, length, marks, right, onChange, describedBy }: EndMarksProps) {
  const held = useRef<Mark | null>(null);
  const first = useRef<HTMLDivElement>(null);
  useEffect(() => first.current?.focus({ preventScroll: true }), []);
  const isTold = right !== null;
  const move = (mark: Mark, to: number) => onChange(moved(marks, mark, to, length));
  const placeOf = (event: PointerEvent) =>
    (event.clientX - event.currentTarget.getBoundingClientRect().left) / view.scale;

  const onPointerDown = (event: PointerEvent<HTMLDivElement>) => {
    if (event.button !== 0 || isTold) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const at = placeOf(event);
    held.current = Math.abs(at - marks.from) <= Math.abs(at - marks.to) ? "from" : "to";
    move(held.current, at);
  };
  const onPointerMove = (event: PointerEvent<HTMLDivElement>) => {
    if (held.current) move(held.current, placeOf(event));
  };
  const letGo = () => {
    held.current = null;
  };
  const onKeyDown = (mark: Mark) => (event: KeyboardEvent) => {
    const direction = DIRECTIONS[event.key];
    if (direction === undefined || isTold) return;
    event.preventDefault();
    event.stopPropagation();
    move(mark, marks[mark] + direction * stepOf({ shift: event.shiftKey, alt: event.altKey }));
  };
  return (
    <div
      className="absolute inset-0 touch-none"
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={letGo}
      onPointerCancel={letGo}
    >
      {(["from", "to"] as const).map((mark) => (
        <div
          key={mark}
          ref={mark === "from" ? first : undefined}
          role="slider"
          tabIndex={isTold ? -1 : 0}
          aria-label={WORDS[mark]}
          aria-describedby={describedBy}
          aria-valuemin={0}
          aria-valuemax={length}
          aria-valuenow={marks[mark]}
          aria-valuetext={`${marks[mark]} mm`}
          aria-disabled={isTold}
          data-mark={mark}
          className="eye-mark"
          style={{ left: marks[mark] * view.scale }}
          onKeyDown={onKeyDown(mark)}
        >
          <span
            className={`eye-mark-tag ${mark === "from" ? "top-2 left-[calc(50%+5px)]" : "top-10 right-[calc(50%+5px)]"}`}
          >
            {WORDS[mark]}
          </span>
        </div>
      ))}
      {right && <RightEnds view={view} right={right} />}
    </div>
  );
}

const DIRECTIONS: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1 };

/** A mark moved, on a tenth of a millimetre, within the window, never past the other one. */
export function moved(marks: Marks, mark: Mark, to: number, length: number): Marks {
  const least = mark === "from" ? 0 : roundTo(marks.from + 0.1, 0.1);
  const most = mark === "from" ? roundTo(marks.to - 0.1, 0.1) : length;
  return { ...marks, [mark]: roundTo(Math.min(most, Math.max(least, to)), 0.1) };
}

/** Where it really starts and ends. */
function RightEnds({ view, right }: { readonly view: Viewport; readonly right: Marks }) {
  return (
    <svg viewBox={`0 0 ${view.width} ${view.height}`} className="eye-overlay" aria-hidden="true">
      {[right.from, right.to].map((x) => (
        <g key={x} strokeDasharray="9 6">
          <path d={`M${x * view.scale} 0V${view.height}`} stroke={DRAWN.dark} strokeWidth="5" opacity="0.8" />
          <path d={`M${x * view.scale} 0V${view.height}`} stroke={DRAWN.truth} strokeWidth="2.2" />
        </g>
      ))}
    </svg>
  );
}
