import type { FeatureBuilder } from "../work";

/** Builders of what lies on plates and is no imperfection. */
export const CLUTTERING = {} as const satisfies Record<string, FeatureBuilder>;
