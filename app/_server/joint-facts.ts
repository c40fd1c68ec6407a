import { isFilletTruth, type Truth } from "@/lib/specimen";
import type { JointFacts } from "@/lib/weld";

/** What a drawing would say of the joint; nothing else of the truth. */
export function factsOf(truth: Truth): JointFacts {
  if (!isFilletTruth(truth)) {
    const { kind, process, position, thickness } = truth.joint;
    return { kind, process, position, thickness };
  }
  const { kind, process, position, baseThickness, standingThickness, size } = truth.joint;
  return { kind, process, position, baseThickness, standingThickness, size, stations: truth.stations };
}
