"use client";
import { type KeyboardEvent, memo, type PointerEvent, useRef } from "react";
import { type Coverage, rowsOfFlags, seenStretches, stretchInSight, ticksBetween, type Viewport } from "@/lib/bench";
import type { Call } from "@/lib/report";
import { BUTT_PLATE_LENGTH, FACES, type Face } from "@/lib/weld";
import { typeName } from "../report/call-words";

const LENGTH = BUTT_PLATE_LENGTH;
const percent = (x: number) => `${(100 * x) / LENGTH}%`;

export interface ThroughLineProps {
  readonly view: Viewport | null;
  readonly face: Face;
  readonly calls: readonly Call[];
  readonly openId: string | null;
  readonly coverage: Coverage;
  readonly onLookAt: (x: number) => void;
  readonly onChoose: (call: Call) => void;
}

/**
 * The weld from end to end as one line: cap indications above, root ones below, what was looked at closely as a trace
 * on either side, and the stretch in sight as a bracket that can be dragged.
 */
export const ThroughLine = memo(function ThroughLine({
  view,
  face,
  calls,
  openId,
  coverage,
  onLookAt,
  onChoose,
}: ThroughLineProps) {
  const area = useRef<HTMLDivElement>(null);
  const grip = useRef<number | null>(null);
  const sight = view ? stretchInSight(view) : { from: 0, to: LENGTH };
  const middle = (sight.from + sight.to) / 2;
  const rows = flagRows(calls, view?.width ?? 0);

  const xOf = (event: PointerEvent) => {
    const box = area.current!.getBoundingClientRect();
    return ((event.clientX - box.left) / box.width) * LENGTH;
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
    const target = keyedMiddle(event, middle);
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
        className="relative h-[108px] cursor-ew-resize touch-none select-none"
        onPointerDown={grab}
        onPointerMove={drag}
        onPointerUp={drop}
        onPointerCancel={drop}
      >
        <FaceTrace face="cap" isUp={face === "cap"} seen={coverage.cap} />
        <FaceTrace face="root" isUp={face === "root"} seen={coverage.root} />
        <div className="absolute inset-x-0 top-[43px] h-[22px] rounded-sm border border-bench-line bg-[#cfcabd]">
          {ticksBetween(0, LENGTH, 2).map(({ at, kind }) => (
            <span
              key={at}
              data-tick=""
              className={`absolute top-0 w-px bg-ink ${kind === "long" ? "h-2.5" : kind === "middle" ? "h-2" : "h-1 opacity-60"}`}
              style={{ left: percent(at) }}
            />
          ))}
          {ticksBetween(0, LENGTH, 2)
            .filter(({ at }) => at % 50 === 0)
            .map(({ at }) => (
              <span
                key={at}
                className={`absolute -bottom-px text-[10px] text-ink tabular-nums leading-3 ${at === 0 ? "pl-1" : at === LENGTH ? "-translate-x-full pr-1" : "-translate-x-1/2"}`}
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
          aria-valuemax={LENGTH}
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
function keyedMiddle(event: KeyboardEvent, middle: number): number | null {
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
      return LENGTH;
    default:
      return null;
  }
}

function FaceTrace({ face, isUp, seen }: { face: Face; isUp: boolean; seen: readonly boolean[] }) {
  const top = face === "cap" ? "top-[38px]" : "top-[67px]";
  const words = face === "cap" ? "top-0" : "bottom-0";
  return (
    <>
      <span className={`absolute -left-1 ${words} ${isUp ? "font-semibold text-bench-text" : ""}`}>
        {face === "cap" ? "Cap" : "Root"}
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

/** The line is about as wide as the picture. Flags of either face keep clear of each other by themselves. */
function flagRows(calls: readonly Call[], width: number): readonly (0 | 1)[] {
  const rows: (0 | 1)[] = calls.map(() => 0);
  for (const face of FACES) {
    const flagged = calls.map((_, index) => index).filter((index) => calls[index].face === face);
    const places = flagged.map((index) => {
      const { from, to } = extentOnLine(calls[index]);
      return ((from + to) / 2 / LENGTH) * width;
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
  readonly isOpen: boolean;
  readonly onChoose: () => void;
}

/** A numbered flag over (cap) or under (root) the place, with its extent as a bar on the line. */
function Flag({ call, number, row, isOpen, onChoose }: FlagProps) {
  const { from, to } = extentOnLine(call);
  const isCap = call.face === "cap";
  const colour = isOpen ? "bg-lamp text-ink" : "bg-sheet text-ink";
  return (
    <>
      <span
        data-extent=""
        className={`pointer-events-none absolute h-1 min-w-1 rounded-sm border border-bench ${isOpen ? "bg-lamp" : "bg-sheet"} ${isCap ? "top-[39px]" : "top-[66px]"}`}
        style={{ left: percent(from), width: percent(to - from) }}
      />
      <button
        type="button"
        data-flag={isOpen ? "open" : ""}
        aria-label={`Indication ${number}, ${isCap ? "cap" : "root"} face, ${typeName(call)}, at ${from} mm: go there`}
        className={`absolute flex h-6 min-w-6 -translate-x-1/2 cursor-pointer justify-center rounded-sm px-1 font-semibold text-[11px] leading-[14px] shadow-[0_0_0_1px_#0b0e10] ${colour} ${FLAG_SPOTS[call.face][row]}`}
        style={{ left: percent((from + to) / 2) }}
        onClick={onChoose}
      >
        {number}
      </button>
    </>
  );
}
