import { ease } from "../../math";
import type { RandomStream } from "../../random";
import type { ButtJoint } from "../../weld";

/** Where the plates were tacked together before welding, mm along the joint. */
export function tacksOf(joint: Pick<ButtJoint, "length">, random: RandomStream): number[] {
  const tacks: number[] = [];
  for (let x = random.uniform(22, 40); x < joint.length - 12; x += random.uniform(75, 120)) tacks.push(x);
  return tacks;
}

/** 1 on a tack, 0 from 7 mm beside it. */
export function nearTack(tacks: readonly number[], x: number): number {
  let most = 0;
  for (const tack of tacks) most = Math.max(most, ease(7, 4, Math.abs(x - tack)));
  return most;
}
