import type { Mm } from "../math";
import type { FilletJoint } from "./fillet";
import { type ButtJoint, POSITION_NAMES, PROCESS_NAMES } from "./joint";

export type ButtFacts = Pick<ButtJoint, "kind" | "process" | "position" | "thickness">;

export type FilletFacts = Pick<
  FilletJoint,
  "kind" | "process" | "position" | "baseThickness" | "standingThickness" | "size"
> & {
  /** Where legs and throat are to be measured, mm from the datum, station 1 first. */
  readonly stations: readonly Mm[];
};

/** What a drawing says of a joint, and what everybody may know of a specimen. */
export type JointFacts = ButtFacts | FilletFacts;

/** A joint in words: thickness, size of a fillet, process and position. */
export function describeJoint(facts: ButtFacts | Omit<FilletFacts, "stations">): string {
  const { process, position } = facts;
  const welded = `process ${process} (${PROCESS_NAMES[process]}), position ${position} (${POSITION_NAMES[position]})`;
  if (facts.kind === "butt") return `Butt plate, ${facts.thickness} mm, ${welded}`;
  const { baseThickness, standingThickness, size } = facts;
  return `Fillet weld ${size.symbol}${size.value}, base plate ${baseThickness} mm, standing plate ${standingThickness} mm, ${welded}`;
}
