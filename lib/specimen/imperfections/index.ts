import type { ImperfectionType } from "../../imperfections";
import type { RandomStream } from "../../random";
import type { Feature, FeatureBuilder, FeatureRequest, Harmless } from "../work";
import { CUT } from "./cut";
import { SHAPED } from "./shaped";

/** What a feature can be built for. Linear misalignment is none: it is how the plates stand to each other. */
export type Buildable = Exclude<ImperfectionType, "linear-misalignment"> | Harmless;

const BUILDERS: Readonly<Record<Buildable, FeatureBuilder>> = { ...CUT, ...SHAPED };

/** True for what `buildFeature` can build. */
export const isBuildable = (type: FeatureRequest["type"]): type is Buildable => Object.hasOwn(BUILDERS, type);

/**
 * Builds the feature that a request asks for, drawing what the request leaves open from `random` (a stream of its own).
 * Throws for linear misalignment, which no feature makes.
 */
export function buildFeature(request: FeatureRequest, random: RandomStream): Feature {
  if (!isBuildable(request.type)) throw new Error(`no feature is built for ${request.type}`);
  return BUILDERS[request.type](request, random);
}
