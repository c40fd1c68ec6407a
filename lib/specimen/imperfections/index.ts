import { keepWarm } from "../../math";
import type { RandomStream } from "../../random";
import type { Feature, FeatureBuilder, FeatureRequest } from "../work";
import { CLUTTERING } from "./cluttering";
import { CUT } from "./cut";
import { SHAPED } from "./shaped";

const BUILDERS: Readonly<Partial<Record<FeatureRequest["type"], FeatureBuilder>>> = {
  ...CUT,
  ...SHAPED,
  ...CLUTTERING,
};

/**
 * Builds the feature that a request asks for, drawing what the request leaves open from `random` (a stream of its own).
 * Throws for both misalignments, which no feature makes: they are how the plates stand to each other.
 */
export function buildFeature(request: FeatureRequest, random: RandomStream): Feature {
  const build = BUILDERS[request.type];
  if (!build) throw new Error(`no feature is built for ${request.type}`);
  return keepWarm(build(request, random));
}
