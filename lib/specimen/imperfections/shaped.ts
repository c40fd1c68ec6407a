import type { ImperfectionType } from "../../imperfections";
import type { FeatureBuilder, Harmless } from "../work";
import { buildContinuousUndercut } from "./continuous-undercut";
import { buildExcessPenetration } from "./excess-penetration";
import { buildExcessWeldMetal } from "./excess-weld-metal";
import { buildIncompletelyFilledGroove } from "./incompletely-filled-groove";
import { buildIncorrectWeldToe } from "./incorrect-weld-toe";
import { buildInterRunFusion } from "./inter-run-fusion";
import { buildInterRunUndercut } from "./inter-run-undercut";
import { buildIntermittentUndercut } from "./intermittent-undercut";
import { buildIrregularSurface } from "./irregular-surface";
import { buildIrregularWidth } from "./irregular-width";
import { buildOverlap } from "./overlap";
import { buildRootConcavity } from "./root-concavity";
import { buildRootFusion } from "./root-fusion";
import { buildRootPenetration } from "./root-penetration";
import { buildSagging } from "./sagging";
import { buildShallowUndercut } from "./shallow-undercut";
import { buildShrinkageGroove } from "./shrinkage-groove";
import { buildSidewallFusion } from "./sidewall-fusion";
import { buildTackImperfection } from "./tack-imperfection";

/** Builders of the imperfections that come mostly from how the weld was laid. */
export const SHAPED = {
  "continuous-undercut": buildContinuousUndercut,
  "intermittent-undercut": buildIntermittentUndercut,
  "shrinkage-groove": buildShrinkageGroove,
  "shallow-undercut": buildShallowUndercut,
  "incompletely-filled-groove": buildIncompletelyFilledGroove,
  overlap: buildOverlap,
  "excess-weld-metal": buildExcessWeldMetal,
  "excess-penetration": buildExcessPenetration,
  "sidewall-fusion": buildSidewallFusion,
  "root-fusion": buildRootFusion,
  "root-penetration": buildRootPenetration,
  "root-concavity": buildRootConcavity,
  "inter-run-fusion": buildInterRunFusion,
  "inter-run-undercut": buildInterRunUndercut,
  "irregular-width": buildIrregularWidth,
  "irregular-surface": buildIrregularSurface,
  "incorrect-weld-toe": buildIncorrectWeldToe,
  sagging: buildSagging,
  "tack-imperfection": buildTackImperfection,
} as const satisfies Partial<Record<ImperfectionType | Harmless, FeatureBuilder>>;
