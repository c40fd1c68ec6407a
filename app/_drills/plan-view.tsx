"use client";
import {
  type KeyboardEvent,
  type PointerEvent,
  type ReactNode,
  type Ref,
  type RefObject,
  useEffect,
  useImperativeHandle,
  useLayoutEffect,
  useRef,
  useState,
} from "react";
import { settingKeys } from "@/app/_bench/frame/use-bench-keys";
import type { GaugeHandling } from "@/app/_bench/frame/use-gauge";
import { type Plan, planOf } from "@/app/_bench/overlay/plan-of-gauge";
import { moveCursor, type Place, type ScreenPoint, toPlace, type Viewport } from "@/lib/bench";
import { shadePlan } from "@/lib/drills";
import type { Heights } from "@/lib/gauges";

/** Points of the picture of the metal to a mm; the screen shows them larger or smaller as it has room. */
const PICTURE_PER_MM = 7;
/** Strip below the plate for the rule along the datum, px. */
const RULE = 24;
/** Before the room is known, px. */
const FIRST_WIDTH = 560;
const TURN = { coarse: 15, fine: 1 } as const;

export interface PlanViewProps {
  readonly heights: Heights;
  readonly gauge: GaugeHandling;
  /** To the moving part. */
  readonly onSlide: () => void;
  readonly label: string;
  /** Places along the weld to be marked, mm, with what is written at them. */
  readonly stations: readonly { readonly x: number; readonly text: string }[];
  /** Places along the weld at which the gauge was read, mm. */
  readonly read: readonly number[];
  readonly isAsking: boolean;
  readonly ref?: Ref<HTMLDivElement>;
}

/** The plate from above under a lamp, and the gauge on it to scale: dragged, turned by its knob, or moved by keys. */
export function PlanView({ heights, gauge, onSlide, label, stations, read, isAsking, ref }: PlanViewProps) {
  const { x0, x1, y0, y1 } = heights.extent;
  const desk = useRef<HTMLDivElement>(null);
  const width = useWidth(desk);
  const scale = width / (x1 - x0);
  const view: Viewport = {
    aspect: "cap",
    width,
    height: (y1 - y0) * scale,
    x: (x0 + x1) / 2,
    up: (y0 + y1) / 2,
    scale,
  };
  useImperativeHandle(ref, () => desk.current as HTMLDivElement, []);
  const held = useRef(false);
  const placement = gauge.out?.placement ?? null;

  const pointOf = (event: PointerEvent): ScreenPoint => {
    const box = event.currentTarget.getBoundingClientRect();
    return { left: event.clientX - box.left, top: event.clientY - box.top };
  };
  const onPointerDown = (event: PointerEvent) => {
    if (event.button !== 0 || !isAsking) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const at = pointOf(event);
    held.current = gauge.grab(at, view);
    if (!held.current) gauge.send({ kind: "move", place: onPiece(heights, toPlace(view, at)) });
  };
  const onPointerMove = (event: PointerEvent) => {
    if (held.current) gauge.drag(pointOf(event), view);
  };
  const letGo = () => {
    held.current = false;
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (!placement || !isAsking || event.ctrlKey || event.metaKey) return;
    const moved = moveCursor(placement, "cap", event.key, { shift: event.shiftKey, alt: event.altKey });
    const act = moved
      ? () => gauge.send({ kind: "move", place: onPiece(heights, moved) })
      : event.key.toLowerCase() === "o"
        ? onSlide
        : settingKeys(gauge, event.shiftKey ? TURN.fine : TURN.coarse)[event.key.toLowerCase()];
    if (!act) return;
    event.preventDefault();
    act();
  };
  return (
    <div
      ref={desk}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys move the gauge, as on the bench
      tabIndex={0}
      role="application"
      aria-label={label}
      data-plan=""
      className="relative w-full cursor-crosshair touch-none select-none overflow-hidden rounded bg-[#15181a]"
      style={{ aspectRatio: `${view.width} / ${view.height + RULE}` }}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={letGo}
      onPointerCancel={letGo}
      onKeyDown={onKeyDown}
    >
      <Metal heights={heights} />
      <svg
        viewBox={`0 0 ${view.width} ${view.height + RULE}`}
        className="absolute inset-0 size-full"
        aria-hidden="true"
      >
        {stations.map(({ x, text }) => (
          <Station key={x} left={(x - x0) * scale} height={view.height} text={text} />
        ))}
        {placement && <GaugeFromAbove plan={planOf(view, placement)} />}
        <DatumRule view={view} x0={x0} x1={x1} read={read} />
        <text
          x="12"
          y="28"
          className="fill-bench-text"
          fontSize="16"
          stroke="#15181a"
          strokeWidth="4"
          paintOrder="stroke"
        >
          A
        </text>
        <text
          x="12"
          y={view.height - 14}
          className="fill-bench-text"
          fontSize="16"
          stroke="#15181a"
          strokeWidth="4"
          paintOrder="stroke"
        >
          B
        </text>
      </svg>
    </div>
  );
}

/** Width of an element, px, as it changes. */
function useWidth(element: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(FIRST_WIDTH);
  useLayoutEffect(() => {
    if (!element.current) return;
    const watch = new ResizeObserver(([{ contentRect }]) => setWidth(contentRect.width));
    watch.observe(element.current);
    return () => watch.disconnect();
  }, [element]);
  return width;
}

const onPiece = ({ extent: { x0, x1, y0, y1 } }: Heights, { x, y }: Place): Place => ({
  x: Math.min(x1, Math.max(x0, x)),
  y: Math.min(y1, Math.max(y0, y)),
});

/** The picture of the metal; it is painted once for a piece. */
function Metal({ heights }: { readonly heights: Heights }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const context = canvas.current?.getContext("2d");
    if (!canvas.current || !context) return;
    const { columns, rows, grey } = shadePlan(heights, PICTURE_PER_MM);
    canvas.current.width = columns;
    canvas.current.height = rows;
    const picture = context.createImageData(columns, rows);
    for (let n = 0; n < grey.length; n++) {
      // steel is a little bluer than paper
      picture.data[4 * n] = grey[n] * 0.94;
      picture.data[4 * n + 1] = grey[n] * 0.98;
      picture.data[4 * n + 2] = grey[n];
      picture.data[4 * n + 3] = 255;
    }
    context.putImageData(picture, 0, 0);
  }, [heights]);
  return <canvas ref={canvas} className="absolute inset-x-0 top-0 w-full" />;
}

/** A chalk line across the plate, broken over the weld so that the metal stays in sight, and what it is. */
function Station({
  left,
  height,
  text,
}: {
  readonly left: number;
  readonly height: number;
  readonly text: string;
}): ReactNode {
  const ends = [
    [0, 0.16 * height],
    [0.84 * height, height],
  ];
  return (
    <g>
      {ends.map(([from, to]) => (
        <g key={from}>
          <path d={`M${left} ${from}V${to}`} stroke="#15181a" strokeWidth="6" />
          <path d={`M${left} ${from}V${to}`} className="stroke-lamp" strokeWidth="3" />
        </g>
      ))}
      <text
        x={left + 8}
        y="20"
        fontSize="16"
        className="fill-lamp"
        stroke="#15181a"
        strokeWidth="5"
        paintOrder="stroke"
        fontWeight="600"
      >
        {text}
      </text>
    </g>
  );
}

/** mm from the datum along the lower edge, and where the gauge has been read. */
function DatumRule({
  view,
  x0,
  x1,
  read,
}: {
  readonly view: Viewport;
  readonly x0: number;
  readonly x1: number;
  readonly read: readonly number[];
}) {
  const { scale } = view;
  const tens = Array.from({ length: Math.floor((x1 - x0) / 10) + 1 }, (_, n) => x0 + 10 * n);
  const top = view.height;
  return (
    <g>
      <rect x="0" y={top} width={view.width} height={RULE} className="fill-bench" />
      {tens.map((x) => {
        const left = (x - x0) * scale;
        return (
          <g key={x}>
            <path d={`M${left} ${top}v7`} className="stroke-bench-text" strokeWidth="1.5" />
            {x > x0 && x < x1 && (
              <text x={left} y={top + 19} fontSize="12" textAnchor="middle" className="fill-bench-dim">
                {x}
              </text>
            )}
          </g>
        );
      })}
      {read.map((x) => (
        <path
          key={x}
          d={`M${(x - x0) * scale} ${top - 2}l-6 -11h12z`}
          className="fill-lamp"
          stroke="#15181a"
          strokeWidth="1.5"
          data-read={x}
        />
      ))}
    </g>
  );
}

/** Blade, feet, the place of the moving part and the knob, in light and dark so that they read on any metal. */
function GaugeFromAbove({ plan }: { readonly plan: Plan }) {
  const half = Math.max(plan.left, 3);
  const width = plan.to - plan.from;
  return (
    <g transform={`translate(${plan.spot.left} ${plan.spot.top}) rotate(${plan.angle})`} strokeLinejoin="round">
      <rect x={plan.from} y={-half} width={width} height={2 * half} rx="3" fill="#3d474d" opacity="0.4" />
      <rect
        x={plan.from}
        y={-half}
        width={width}
        height={2 * half}
        rx="3"
        fill="none"
        stroke="#15181a"
        strokeWidth="3.5"
      />
      <rect
        x={plan.from}
        y={-half}
        width={width}
        height={2 * half}
        rx="3"
        fill="none"
        stroke="#f4f2ea"
        strokeWidth="1.5"
      />
      {plan.feet.map(({ from, to }) => (
        <rect
          key={from}
          x={from}
          y={-half}
          width={to - from}
          height={2 * half}
          fill="#f4f2ea"
          fillOpacity="0.85"
          stroke="#15181a"
          strokeWidth="1.5"
        />
      ))}
      <Ring x={0} radius={8} />
      <path d={`M${plan.to} 0H${plan.knob - 13}`} stroke="#15181a" strokeWidth="5" />
      <path d={`M${plan.to} 0H${plan.knob - 13}`} className="stroke-lamp" strokeWidth="2" />
      <circle cx={plan.knob} cy="0" r="13" fill="#3d474d" stroke="#15181a" strokeWidth="5" />
      <circle cx={plan.knob} cy="0" r="13" fill="none" className="stroke-lamp" strokeWidth="2.2" />
      {[-1, 1].map((side) => (
        <path
          key={side}
          d={`M${plan.knob - 3.5} ${side * 3.5}L${plan.knob} ${side * 7.5}L${plan.knob + 3.5} ${side * 3.5}`}
          fill="none"
          className="stroke-lamp"
          strokeWidth="2"
        />
      ))}
    </g>
  );
}

/** An open ring, so that the place itself stays in sight. */
const Ring = ({ x, radius }: { readonly x: number; readonly radius: number }) => (
  <>
    <circle cx={x} cy="0" r={radius} fill="none" stroke="#15181a" strokeWidth="5" />
    <circle cx={x} cy="0" r={radius} fill="none" className="stroke-lamp" strokeWidth="2.2" />
  </>
);
