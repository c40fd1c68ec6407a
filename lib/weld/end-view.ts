import { z } from "zod";
import type { Mm } from "../math";

const mm = z.number().min(-200).max(200);
const outline = z.array(z.strictObject({ along: mm, up: mm }).readonly()).readonly();

/** One end of a joint as an eye along the weld sees it: closed outlines, mm from the corner of the base plate and an ideal standing plate. */
const endViewSchema = z
  .strictObject({
    base: outline,
    standing: outline,
    /** Outline of the weld as far as it stands out over both plates, from the base plate's toe to the standing plate's and back. */
    weld: outline,
  })
  .readonly();
export type EndView = z.infer<typeof endViewSchema>;

/** Both ends of a fillet joint. */
export const endViewsSchema = z.strictObject({ datum: endViewSchema, farEnd: endViewSchema }).readonly();
export type EndViews = z.infer<typeof endViewsSchema>;

/** At the corners of the standing plate's foot a leaf finds edges, not the gap, mm. */
const FOOT_EDGE: Mm = 0.5;

/** Thickest leaf that goes under the standing plate's foot at an end, mm: the least distance between both plates. */
export function feeledGap({ base, standing }: EndView): Mm {
  const top = Math.max(...standing.map(({ up }) => up));
  const foot = standing.filter(({ along, up }) => along <= 0 && up < top / 2);
  const level = (along: Mm) => {
    const n = base.findIndex((point) => point.along >= along);
    return n < 0 ? 0 : base[n].up;
  };
  const width = Math.max(...foot.map(({ along }) => -along));
  return foot
    .filter(({ along }) => along > -width + FOOT_EDGE && along < -FOOT_EDGE)
    .reduce((least, { along, up }) => Math.min(least, up - level(along)), Number.POSITIVE_INFINITY);
}
