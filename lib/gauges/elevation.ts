import type { Mm } from "../math";
import type { Heights } from "./heights";
import { type SectionPair, type Spot, sectionAlong, stripAlong } from "./strip";

/** What an eye beside the blade sees of the metal: heights only, mm along the blade and mm of height. */
export interface Elevation {
  /** The metal that the blade stands on: what hides the feet's lower ends. */
  readonly near: readonly SectionPair[];
  /** The outline of what stands behind the blade and shows above it. */
  readonly beyond: readonly SectionPair[];
  /** The other side of the metal that the blade stands on; null where that is not known. */
  readonly under: readonly SectionPair[] | null;
}

/** How far behind the blade an eye still sees metal stand up, mm. Common practice, no source. */
const DEPTH_OF_VIEW: Mm = 14;

/**
 * The metal beside a blade from `from` to `to` mm along it, seen from its right. A gauge in the corner of a fillet is
 * looked at with its spot on the root corner.
 */
export function lookAlong(heights: Heights, spot: Spot, from: Mm, to: Mm, thickness: Mm): Elevation {
  const middle = thickness / 2 + DEPTH_OF_VIEW / 2;
  const { underside } = heights;
  return {
    under: underside && sectionAlong({ ...heights, heightAt: underside }, spot, from, to, 0.25),
    near: stripAlong(heights, spot, from, to, thickness / 2, 0.125),
    beyond: stripAlong(heights, spot, from, to, DEPTH_OF_VIEW / 2, 0.25, middle),
  };
}
