import type { RandomStream } from "../../random";
import { FEATURE_ROWS, weightOf } from "./blueprint";
import type { Asked } from "./requests";
import { type FeatureRow, NEUTRAL_ROWS } from "./rows";

/** More stops than this in one run would mean that electrodes had been thrown away half used. */
const MOST_STOPS = 2;

/** Kinds for a face, drawn by weight and by what the joint makes likely, without going over the most of each kind. */
export function pickRows(asked: Asked, count: number, random: RandomStream): FeatureRow[] {
  const rows = FEATURE_ROWS.filter((row) => row.face === asked.face && isPossible(row, asked));
  const picked: FeatureRow[] = [];
  for (let n = 0; n < count; n++) {
    const isFull = picked.filter((row) => row.site === "stop").length >= MOST_STOPS;
    const open = rows.filter(
      (row) => !(isFull && row.site === "stop") && picked.filter((other) => other.type === row.type).length < row.most,
    );
    picked.push(pickByWeight(open, (row) => weightOf(row, asked.joint.process) * likelihood(row, asked), random));
  }
  return picked;
}

/** Different decoys for a face. */
export function pickDecoys({ face, joint }: Asked, count: number, random: RandomStream): FeatureRow[] {
  const rows = NEUTRAL_ROWS.filter((row) => row.face === face);
  const picked: FeatureRow[] = [];
  for (let n = 0; n < count; n++) {
    const open = rows.filter((row) => !picked.includes(row));
    picked.push(pickByWeight(open, (row) => weightOf(row, joint.process), random));
  }
  return picked;
}

function pickByWeight<T>(items: readonly T[], weight: (item: T) => number, random: RandomStream): T {
  let left = random.uniform(0, 1) * items.reduce((sum, item) => sum + weight(item), 0);
  for (const item of items) {
    left -= weight(item);
    if (left < 0) return item;
  }
  return items[items.length - 1];
}

/** Slag between runs needs two runs. */
const isPossible = (row: FeatureRow, { layout }: Asked): boolean =>
  !(row.variants?.includes("between") && layout.runs.length < 2);

/** Gaps wider than this sag and burn through, narrower ones do not come through; mm. */
const GAP = { wide: 3.1, tight: 2.5 };
const HIGH_ROOT_FACE = 1.8;

/** A wide gap lets the root sag and burn through, a narrow one keeps it from coming through; a step bars one root edge. */
function likelihood(row: FeatureRow, { joint, plates }: Asked): number {
  const wide = joint.rootGap > GAP.wide;
  const tight = joint.rootGap < GAP.tight || joint.rootFace > HIGH_ROOT_FACE;
  const stepped = Math.max(Math.abs(plates.stepAtDatum), Math.abs(plates.stepAtFarEnd)) > 1;
  switch (row.type) {
    case "excess-penetration":
    case "burn-through":
      return wide ? 2 : tight ? 0.4 : 1;
    case "root-penetration":
      return tight ? 2 : wide ? 0.4 : 1;
    case "root-fusion":
      return stepped ? 2.5 : 0.8;
    default:
      return 1;
  }
}
