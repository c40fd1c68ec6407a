import type { Asked } from "./place-row";
import type { FeatureRow } from "./rows";

/** Gaps wider than this sag and burn through, narrower ones do not come through; mm. */
const GAP = { wide: 3.1, tight: 2.5 };
const HIGH_ROOT_FACE = 1.8;
const STEPPED_FROM = 1;

export const isGapWide = ({ joint }: Pick<Asked, "joint">): boolean => joint.rootGap > GAP.wide;
const isGapTight = ({ joint }: Pick<Asked, "joint">): boolean =>
  joint.rootGap < GAP.tight || joint.rootFace > HIGH_ROOT_FACE;
export const isStepped = ({ plates }: Pick<Asked, "plates">): boolean =>
  Math.max(Math.abs(plates.stepAtDatum), Math.abs(plates.stepAtFarEnd)) > STEPPED_FROM;

/**
 * How many times likelier a joint makes a row: a wide gap lets the root sag and burn through, a narrow one keeps it from
 * coming through; a step bars one root edge. Common practice, no source.
 */
export function jointEffect({ type }: FeatureRow, asked: Pick<Asked, "joint" | "plates">): number {
  const wide = isGapWide(asked);
  const tight = isGapTight(asked);
  switch (type) {
    case "excess-penetration":
    case "burn-through":
      return wide ? 2 : tight ? 0.4 : 1;
    case "root-penetration":
      return tight ? 2 : wide ? 0.4 : 1;
    case "root-fusion":
      return isStepped(asked) ? 2.5 : 1;
    default:
      return 1;
  }
}
