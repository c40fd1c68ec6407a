import type { Truth, TruthItem } from "@/lib/specimen";
import { chanceToFind, difficultyOf } from "@/lib/specimen/difficulty";
import type { Skill } from "./skill";

/** The joint as the difficulty of items goes by it: a fillet is the groove between its plates, laid out flat. */
function workedJoint({ joint }: Truth): Parameters<typeof difficultyOf>[2] {
  if (joint.kind === "butt") return joint;
  const { process, position, length, baseThickness } = joint;
  const groove = { grooveAngle: 90, rootGap: 0, rootFace: 0 };
  return { kind: "butt", process, position, length, width: 2 * length, thickness: baseThickness, ...groove };
}

/** Chance that somebody finds an item: logistic in ability less difficulty, and so in the logarithm of its size. */
export const chanceOf = (item: TruthItem, truth: Truth, ability: number, { offsets }: Pick<Skill, "offsets">): number =>
  chanceToFind(ability + (offsets[item.type] ?? 0), difficultyOf(item, item.face, workedJoint(truth)));
