import type { TruthItem } from "../truth";
import { type Measure, VISIBILITY } from "./visibility";

export const SIZE_BANDS = ["small", "medium", "large"] as const;
export type SizeBand = (typeof SIZE_BANDS)[number];

/** The parts of a truth item that its look depends on. */
export type Seen = Pick<TruthItem, "type" | "start" | "end" | "across" | "size" | "width" | "outline">;

/** The measure of an item, mm. A point has no length: what its outline spans along the weld stands for it. */
export function measureOf(item: Seen, measure: Measure): number {
  switch (measure) {
    case "size":
      return item.size ?? missing(item, measure);
    case "width":
      return item.width ?? spanOf(item, 1);
    case "length":
      return item.end > item.start ? item.end - item.start : spanOf(item, 0);
  }
}

function spanOf(item: Seen, axis: 0 | 1): number {
  const values = item.outline.map((point) => point[axis]);
  return Math.max(...values) - Math.min(...values);
}

function missing(item: Seen, measure: Measure): never {
  throw new Error(`${item.type} has no ${measure}`);
}

/** How large an item is among its kind, by what was measured on the surface. */
export function bandOf(item: Seen): SizeBand {
  const { measure, bands } = VISIBILITY[item.type];
  const value = measureOf(item, measure);
  return value < bands[0] ? "small" : value < bands[1] ? "medium" : "large";
}
