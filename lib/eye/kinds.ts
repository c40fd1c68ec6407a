import { z } from "zod";

/** What one task of a drill for the eye asks. */
export const EYE_TASKS = ["spot", "name", "ends", "size", "pair"] as const;
export type EyeTaskKind = (typeof EYE_TASKS)[number];

/** The drills for the eye, in the order in which they are best taken: all tasks mixed, one kind by itself, or a warm-up. */
export const EYE_DRILLS = ["mixed", "spot", "name", "pair", "ends", "size", "burst"] as const;
export type EyeDrill = (typeof EYE_DRILLS)[number];

/** Tasks in a round and what they are of; a burst ends with its time, and has more than anybody answers in it. */
export const EYE_ROUNDS: Readonly<Record<EyeDrill, { readonly length: number; readonly of: readonly EyeTaskKind[] }>> =
  {
    mixed: { length: 10, of: EYE_TASKS },
    spot: { length: 12, of: ["spot"] },
    name: { length: 10, of: ["name"] },
    pair: { length: 8, of: ["pair"] },
    ends: { length: 8, of: ["ends"] },
    size: { length: 8, of: ["size"] },
    burst: { length: 40, of: ["spot", "name"] },
  };

/** Length of a warm-up burst, s; without its clock it has as many tasks as a mixed round. */
export const BURST_SECONDS = 75;
export const CALM_BURST = EYE_ROUNDS.mixed.length;

/** How an imperfection is named: out of four, or out of all that can be on the face. */
export const NAMINGS = ["four", "list"] as const;
export type Naming = (typeof NAMINGS)[number];

/** What a round is begun with. */
export const eyeChoiceSchema = z.strictObject({
  drill: z.enum(EYE_DRILLS),
  naming: z.enum(NAMINGS),
  /** Whether a burst ends with its time. */
  isTimed: z.boolean(),
});
export type EyeChoice = Readonly<z.infer<typeof eyeChoiceSchema>>;

/** Tasks in a round that is begun so. */
export const lengthOf = ({ drill, isTimed }: Pick<EyeChoice, "drill" | "isTimed">): number =>
  drill === "burst" && !isTimed ? CALM_BURST : EYE_ROUNDS[drill].length;
