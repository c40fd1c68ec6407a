"use client";
import { DRAWN } from "@/app/_bench/overlay/palette";
import type { Viewport } from "@/lib/bench";
import type { ShownThing } from "@/lib/eye";
import { upOnScreen } from "@/lib/weld";
import { thingName } from "./eye-words";

/** Height of a tag, and room for its text, px. */
const TAG = { height: 24, perSign: 7.6, room: 16 } as const;

/** What is in a window, outlined and named: imperfections unbroken, what is harmless broken. */
export function ThingOutlines({ view, things }: { readonly view: Viewport; readonly things: readonly ShownThing[] }) {
  return (
    <svg viewBox={`0 0 ${view.width} ${view.height}`} className="eye-overlay" aria-hidden="true">
      {things.map((thing, n) => {
        const corners = thing.outline.map((point) => onScreen(view, point));
        const isHarmless = thing.what !== "imperfection";
        const colour = isHarmless ? DRAWN.light : DRAWN.truth;
        const path = `M${corners.map(([left, top]) => `${left.toFixed(1)} ${top.toFixed(1)}`).join("L")}Z`;
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: things of a window never change
          <g key={n} data-outline={thing.what}>
            <path d={path} fill="none" stroke={DRAWN.dark} strokeWidth="5" strokeLinejoin="round" opacity="0.8" />
            <path
              d={path}
              fill="none"
              stroke={colour}
              strokeWidth="2.2"
              strokeLinejoin="round"
              strokeDasharray={isHarmless ? "7 5" : undefined}
            />
            <Tag view={view} corners={corners} text={tagOf(thing)} colour={colour} />
          </g>
        );
      })}
    </svg>
  );
}

const tagOf = ({ what, name }: ShownThing): string =>
  what === "neutral" ? `${thingName(name)}, not recorded` : thingName(name);

type Corner = readonly [left: number, top: number];

/** The name above the outline, or under it where there is no room; never beyond the window. */
function Tag({
  view,
  corners,
  text,
  colour,
}: {
  readonly view: Viewport;
  readonly corners: readonly Corner[];
  readonly text: string;
  readonly colour: string;
}) {
  const lefts = corners.map(([left]) => left);
  const tops = corners.map(([, top]) => top);
  const width = text.length * TAG.perSign + TAG.room;
  const middle = (Math.max(0, Math.min(...lefts)) + Math.min(view.width, Math.max(...lefts))) / 2;
  const left = Math.max(4, Math.min(view.width - width - 4, middle - width / 2));
  const over = Math.min(...tops) - TAG.height - 6;
  const under = Math.min(view.height - TAG.height - 4, Math.max(...tops) + 6);
  const top = over > 4 ? over : under;
  return (
    <>
      <rect x={left} y={top} width={width} height={TAG.height} rx="4" fill={DRAWN.dark} opacity="0.88" />
      <text
        x={left + width / 2}
        y={top + 16.5}
        textAnchor="middle"
        fontSize="13.5"
        fontWeight="600"
        textLength={width - TAG.room}
        lengthAdjust="spacingAndGlyphs"
        fill={colour}
      >
        {text}
      </text>
    </>
  );
}

/** A place of the window on the screen, px. */
export const onScreen = (view: Viewport, [x, y]: readonly [number, number]): Corner => [
  x * view.scale,
  view.height / 2 - y * upOnScreen(view.aspect) * view.scale,
];
