import { z } from "zod";
import { IMPERFECTION_TYPES } from "../../imperfections";

/** What a fillet specimen must come out as, measured. */
export const filletBlueprintSchema = z
  .strictObject({
    /** Recordable indications, sizes of the weld included: from least to most. */
    indications: z.tuple([z.number().int().min(0), z.number().int().max(8)]).readonly(),
    /** Harmless features and clutter. */
    harmless: z.tuple([z.number().int().min(0), z.number().int().max(8)]).readonly(),
    /** Share of specimens whose standing plate stands off the base plate. */
    gapped: z.number().min(0).max(1),
    /** Types that come at least once each; none where nothing is said. */
    includes: z.array(z.enum(IMPERFECTION_TYPES)).readonly().optional(),
    /** Types that alone are planted besides; any where nothing is said. */
    among: z.array(z.enum(IMPERFECTION_TYPES)).readonly().optional(),
  })
  .readonly();
export type FilletBlueprint = z.infer<typeof filletBlueprintSchema>;

export const FILLET_BLUEPRINTS = {
  practice: { indications: [4, 6], harmless: [1, 3], gapped: 0.35 },
  clean: { indications: [0, 0], harmless: [0, 0], gapped: 0 },
} as const satisfies Record<string, FilletBlueprint>;

/** Fillets for practice besides: with little to find. */
export const PRACTICE_FILLETS = {
  sparse: { indications: [1, 3], harmless: [1, 3], gapped: 0.2 },
} as const satisfies Record<string, FilletBlueprint>;
