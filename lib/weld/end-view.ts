import { z } from "zod";

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
