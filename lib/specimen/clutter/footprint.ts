import type { Clutter } from "../../imperfections";
import { clamp } from "../../math";
import type { Field } from "../field";
import { bandOutline } from "../measure";
import type { ClutterItem, Point } from "../truth";
import type { FaceWork } from "../work";

/** A pixel is seen as covered from this share on. */
const SEEN_FROM = 0.22;
/** Pixels are gathered in strips this wide, mm; strips with less than this area hold stray grains only, mm2. */
const STRIP = 0.5;
const LEAST_IN_STRIP = 0.05;
/** What covers less than this, mm2, and is seen for less than this length, mm, is not to be seen at all. */
const LEAST = { area: 1, length: 4 };

interface Strip {
  low: number;
  high: number;
  area: number;
}

/** Where pixels were really changed: their spans in strips along and across the plate. */
export interface Footprint {
  readonly alongX: Map<number, Strip>;
  readonly alongY: Map<number, Strip>;
}

export const emptyFootprint = (): Footprint => ({ alongX: new Map(), alongY: new Map() });

function stretch(strips: Map<number, Strip>, at: number, value: number, half: number): void {
  const key = Math.floor(at / STRIP);
  const strip = strips.get(key);
  const area = 4 * half * half;
  if (!strip) strips.set(key, { low: value - half, high: value + half, area });
  else {
    strip.low = Math.min(strip.low, value - half);
    strip.high = Math.max(strip.high, value + half);
    strip.area += area;
  }
}

/** Notes that a pixel of a patch was covered or changed by `share`; what nobody could see is left out. */
export function leaveTrace(footprint: Footprint, field: Field, x: number, y: number, share: number): void {
  if (share < SEEN_FROM) return;
  const half = 0.5 / field.grid.perMm;
  stretch(footprint.alongX, x, y, half);
  stretch(footprint.alongY, y, x, half);
}

const spansOf = (strips: Map<number, Strip>) =>
  [...strips]
    .filter(([, { area }]) => area >= LEAST_IN_STRIP)
    .sort(([a], [b]) => a - b)
    .map(([key, { low, high }]) => ({ x: (key + 0.5) * STRIP, low, high }));

/** The record of what was left on the surface, from its footprint; null where hardly anything of it is to be seen. */
export function clutterFrom(work: FaceWork, id: string, kind: Clutter, footprint: Footprint): ClutterItem | null {
  const area = [...footprint.alongX.values()].reduce((sum, strip) => sum + strip.area, 0);
  const columns = spansOf(footprint.alongX);
  const rows = spansOf(footprint.alongY);
  const length = STRIP * Math.max(columns.length, rows.length);
  const isSeen = area >= LEAST.area || length >= LEAST.length;
  if (!isSeen || columns.length === 0 || rows.length === 0) return null;
  const start = Math.min(...rows.map(({ low }) => low));
  const end = Math.max(...rows.map(({ high }) => high));
  const low = Math.min(...columns.map((span) => span.low));
  const high = Math.max(...columns.map((span) => span.high));
  const isTall = high - low > end - start;
  const outline = isTall
    ? bandOutline(rows, STRIP / 2).map(([y, x]): Point => [x, y])
    : bandOutline(columns, STRIP / 2);
  const { joint } = work;
  const onPlate = ([x, y]: Point): Point => [clamp(x, 0, joint.length), clamp(y, -joint.width / 2, joint.width / 2)];
  return {
    id,
    face: work.face,
    kind,
    start: clamp(start, 0, joint.length),
    end: clamp(end, 0, joint.length),
    across: (low + high) / 2,
    outline: outline.map(onPlate),
  };
}
