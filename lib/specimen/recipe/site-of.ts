import { type ImperfectionType, imperfection } from "../../imperfections";
import { type Face, grooveHalfWidth } from "../../weld";
import type { Seen } from "../difficulty";
import type { WorkedJoint } from "../work";
import { FEATURE_ROWS } from "./feature-rows";
import type { Site } from "./rows";

/** How far the toes lie outside the joint's edge, mm, and how far from them still counts as at the toe. */
const TOE = { outside: { cap: 1.7, root: 1.1 }, inwards: 2.5, outwards: 4 };

/** Sites at which the rows plant a type on a face; how the plates stand is seen along the whole weld. */
function sitesOf(type: ImperfectionType, face: Face): readonly Site[] {
  if (imperfection(type).family === "misalignment") return ["weld"];
  return [...new Set(FEATURE_ROWS.filter((row) => row.type === type && row.face === face).map(({ site }) => site))];
}

/** Where a measured item lies: the only site of its type on the face, or what its place across says. */
export function siteOf(item: Seen, face: Face, joint: WorkedJoint): Site {
  const sites = sitesOf(item.type, face);
  const inside =
    (face === "cap" ? grooveHalfWidth(joint) : joint.rootGap / 2) + TOE.outside[face] - Math.abs(item.across);
  const across: Site = inside > TOE.inwards ? "run" : inside > -TOE.outwards ? "toe" : "plate";
  return sites.length === 0 || sites.includes(across) ? across : sites[0];
}
