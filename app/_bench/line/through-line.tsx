"use client";
import { type KeyboardEvent, memo, type PointerEvent, useRef } from "react";
import { type Coverage, rowsOfFlags, seenStretches, stretchInSight, ticksBetween, type Viewport } from "@/lib/bench";
import type { Call } from "@/lib/report";
import { type Aspect, extentOf, faceOf, jointOf, PIECES, SURFACE_FACES, type SurfaceFace } from "@/lib/weld";
import { FACE_NAMES, typeName } from "../report/call-words";

export interface ThroughLineProps {
  readonly view: Viewport | null;
  readonly aspect: Aspect;
  readonly calls: readonly Call[];
  readonly openId: string | null;
  readonly coverage: Coverage;
  readonly onLookAt: (x: number) => void;
  readonly onChoose: (call: Call) => void;
}

/**
 * The weld from end to end as one line: indications of the cap or of a fillet above, of the root below, what was looked at
 * closely as a trace beside it, and the stretch in sight as a bracket that can be dragged.
 */
export const ThroughLine = memo(function ThroughLine({
  view,
  aspect,
  calls,
  openId,
  coverage,
  onLookAt,
  onChoose,
}: ThroughLineProps) {
  const area = useRef<HTMLDivElement>(null);
  const grip = useRef<number | null>(null);
  const { length } = extentOf(aspect);
  const face = faceOf(aspect);
  const { faces } = PIECES[jointOf(face)];
  const percent = (x: number) => `${(100 * x) / length}%`;
  const sight = view ? stretchInSight(view) : { from: 0, to: length };
  const middle = (sight.from + sight.to) / 2;
  const rows = flagRows(calls, (view?.width ?? 0) / length);

  const xOf = (event: PointerEvent) => {
    const box = area.current!.getBoundingClientRect();
    return ((event.clientX - box.left) / box.width) * length;
  };
  const grab = (event: PointerEvent<HTMLDivElement>) => {
    if (event.button !== 0 || (event.target as Element).closest("[data-flag]")) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const x = xOf(event);
    const isInside = x >= sight.from && x <= sight.to;
    grip.current = isInside ? x - middle : 0;
    if (!isInside) onLookAt(x);
  };
  const drag = (event: PointerEvent<HTMLDivElement>) => {
    if (grip.current !== null) onLookAt(xOf(event) - grip.current);
  };
  const drop = () => {
    grip.current = null;
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const target = keyedMiddle(event, middle, length);
    if (target === null) return;
    event.preventDefault();
    event.stopPropagation();
    onLookAt(target);
  };

  return (
    <section
      aria-label="The weld from end to end"
      className="bg-bench px-6 pt-1 pb-1.5 text-bench-dim text-xs"
      data-line=""
    >
      <div
        ref={area}
        className={`relative cursor-ew-resize touch-none select-none ${faces.length > 1 ? "h-[108px]" : "h-[76px]"}`}
        onPointerDown={grab}
        onPointerMove={drag}
        onPointerUp={drop}
        onPointerCancel={drop}
      >
        {faces.map((one) => (
          <FaceTrace key={one} face={one} isUp={face === one} seen={coverage[one]} percent={percent} />
        ))}
        <div className="absolute inset-x-0 top-[43px] h-[22px] rounded-sm border border-bench-line bg-[#cfcabd]">
          {ticksBetween(0, length, 2).map(({ at, kind }) => (
            <span
              key={at}
              data-tick=""
              className={`absolute top-0 w-px bg-ink ${kind === "long" ? "h-2.5" : kind === "middle" ? "h-2" : "h-1 opacity-60"}`}
              style={{ left: percent(at) }}
            />
          ))}
          {ticksBetween(0, length, 2)
            .filter(({ at }) => at % 50 === 0)
            .map(({ at }) => (
              <span
                key={at}
                className={`absolute -bottom-px text-[10px] text-ink tabular-nums leading-3 ${at === 0 ? "pl-1" : at === length ? "-translate-x-full pr-1" : "-translate-x-1/2"}`}
                style={{ left: percent(at) }}
              >
                {at}
              </span>
            ))}
        </div>
        <div
          role="slider"
          tabIndex={0}
          aria-label="Stretch in sight"
          aria-valuemin={0}
          aria-valuemax={length}
          aria-valuenow={Math.round(middle)}
          aria-valuetext={`${Math.round(sight.from)} to ${Math.round(sight.to)} mm from the datum`}
          onKeyDown={onKeyDown}
          className="absolute inset-y-[32px] rounded-sm border-2 border-lamp bg-lamp/10 shadow-[0_0_0_1px_#0b0e10]"
          style={{ left: percent(sight.from), width: percent(sight.to - sight.from) }}
        />
        {calls.map((call, index) =>
          call.start === null ? null : (
            <Flag
              key={call.id}
              call={call}
              number={index + 1}
              row={rows[index]}
              percent={percent}
              isOpen={call.id === openId}
              onChoose={() => onChoose(call)}
            />
          ),
        )}
      </div>
    </section>
  );
});

/** Steps along the weld, mm: arrow keys, page keys, ends. */
function keyedMiddle(event: KeyboardEvent, middle: number, length: number): number | null {
  switch (event.key) {
    case "ArrowLeft":
      return middle - (event.shiftKey ? 10 : 2);
    case "ArrowRight":
      return middle + (event.shiftKey ? 10 : 2);
    case "PageUp":
      return middle - 30;
    case "PageDown":
      return middle + 30;
    case "Home":
      return 0;
    case "End":
      return length;
    default:
      return null;
  }
}

interface FaceTraceProps {
  readonly face: SurfaceFace;
  readonly isUp: boolean;
  readonly seen: readonly boolean[];
  readonly percent: (x: number) => string;
}

const SHORT_NAMES: Readonly<Record<SurfaceFace, string>> = { cap: "Cap", root: "Root", fillet: "Weld" };

function FaceTrace({ face, isUp, seen, percent }: FaceTraceProps) {
  const top = face === "root" ? "top-[67px]" : "top-[38px]";
  const words = face === "root" ? "bottom-0" : "top-0";
  return (
    <>
      <span className={`absolute -left-1 ${words} ${isUp ? "font-semibold text-bench-text" : ""}`}>
        {SHORT_NAMES[face]}
      </span>
      {seenStretches(seen).map(({ from, to }) => (
        <span
          key={from}
          data-trace=""
          className={`absolute h-[3px] rounded bg-[#8fb7c4] ${top}`}
          style={{ left: percent(from), width: percent(to - from) }}
        />
      ))}
    </>
  );
}

/** While a row is being typed its ends may stand in the wrong order. */
function extentOnLine({ start, end }: Call) {
  const one = start ?? 0;
  const other = end ?? one;
  return { from: Math.min(one, other), to: Math.max(one, other) };
}

/** Width of a flag and a little air, px. */
const FLAG_WIDTH = 26;

/** The line is about as wide as the picture, so many px a mm. Flags of either face keep clear of each other by themselves. */
function flagRows(calls: readonly Call[], pxPerMm: number): readonly (0 | 1)[] {
  const rows: (0 | 1)[] = calls.map(() => 0);
  for (const face of SURFACE_FACES) {
    const flagged = calls.map((_, index) => index).filter((index) => calls[index].face === face);
    const places = flagged.map((index) => {
      const { from, to } = extentOnLine(calls[index]);
      return ((from + to) / 2) * pxPerMm;
    });
    rowsOfFlags(places, FLAG_WIDTH).forEach((row, n) => {
      rows[flagged[n]] = row;
    });
  }
  return rows;
}

/** The row behind shows the edge of its flags that is away from the line, and its numbers stand there. */
const FLAG_SPOTS = {
  cap: ["top-[14px] z-[1] items-center", "top-0 items-start pt-px"],
  root: ["bottom-[14px] z-[1] items-center", "bottom-0 items-end pb-px"],
  fillet: ["top-[14px] z-[1] items-center", "top-0 items-start pt-px"],
} as const;

interface FlagProps {
  readonly call: Call;
  readonly number: number;
  readonly row: 0 | 1;
  readonly percent: (x: number) => string;
  readonly isOpen: boolean;
  readonly onChoose: () => void;
}

/** A numbered flag over (cap) or under (root) the place, with its extent as a bar on the line. */
function Flag({ call, number, row, percent, isOpen, onChoose }: FlagProps) {
  const { from, to } = extentOnLine(call);
  const isBelow = call.face === "root";
  const colour = isOpen ? "bg-lamp text-ink" : "bg-sheet text-ink";
  return (
    <>
      <span
        data-extent=""
        className={`pointer-events-none absolute h-1 min-w-1 rounded-sm border border-bench ${isOpen ? "bg-lamp" : "bg-sheet"} ${isBelow ? "top-[66px]" : "top-[39px]"}`}
        style={{ left: percent(from), width: percent(to - from) }}
      />
      <button
        type="button"
        data-flag={isOpen ? "open" : ""}
        aria-label={`Indication ${number}, ${FACE_NAMES[call.face].toLowerCase()}, ${typeName(call)}, at ${from} mm: go there`}
        className={`absolute flex h-6 min-w-6 -translate-x-1/2 cursor-pointer justify-center rounded-sm px-1 font-semibold text-[11px] leading-[14px] shadow-[0_0_0_1px_#0b0e10] ${colour} ${FLAG_SPOTS[call.face][row]}`}
        style={{ left: percent((from + to) / 2) }}
        onClick={onChoose}
      >
        {number}
      </button>
    </>
  );
}
