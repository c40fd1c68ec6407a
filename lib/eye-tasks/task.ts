import { z } from "zod";
import { ESTIMATES, EYE_TASKS } from "../eye";
import { CLUTTER, IMPERFECTION_TYPES, type ImperfectionType } from "../imperfections";
import { FACES } from "../weld";

const type = z.enum(IMPERFECTION_TYPES as readonly [ImperfectionType, ...ImperfectionType[]]);
const point = z.tuple([z.number(), z.number()]).readonly();

const windowSchema = z.strictObject({
  specimenId: z.string(),
  face: z.enum(FACES),
  left: z.number(),
  middle: z.number(),
  length: z.number().positive(),
  width: z.number().positive(),
  isTurned: z.boolean(),
});

const common = {
  /** Id of the item within its specimen. */
  id: z.string(),
  /** In the window's frame, mm, to a hundredth. */
  outline: z.array(point).readonly(),
  from: z.number(),
  to: z.number(),
  isTarget: z.boolean(),
};
const thingSchema = z.discriminatedUnion("what", [
  z.strictObject({ what: z.literal("imperfection"), name: type, size: z.number().nullable(), ...common }),
  z.strictObject({ what: z.literal("neutral"), name: type, ...common }),
  z.strictObject({ what: z.literal("clutter"), name: z.enum(CLUTTER), ...common }),
]);
/** Something in a window. */
export type Thing = z.infer<typeof thingSchema>;

/** A task with its truth, as it is kept. It never leaves the server before it is answered. */
export const eyeTaskSchema = z.strictObject({
  kind: z.enum(EYE_TASKS),
  windows: z
    .array(z.strictObject({ at: windowSchema, things: z.array(thingSchema).readonly() }))
    .min(1)
    .max(2)
    .readonly(),
  /** Four types, of which one is right; null where all of the face may be. */
  options: z.array(type).length(4).readonly().nullable(),
  estimate: z.enum(ESTIMATES).nullable(),
});
export type EyeTask = Readonly<z.infer<typeof eyeTaskSchema>>;

/** What a task is about; null where there is nothing in its window, or nothing but what comes along. */
export function targetOf({ windows }: EyeTask): { readonly window: 0 | 1; readonly thing: Thing } | null {
  for (const window of [0, 1] as const) {
    const thing = windows[window]?.things.find(({ isTarget }) => isTarget);
    if (thing) return { window, thing };
  }
  return null;
}
