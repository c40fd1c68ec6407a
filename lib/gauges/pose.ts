import type { Degrees, Mm } from "../math";
import type { SectionPair } from "./strip";

/**
 * How a gauge stands in the plane of its blade. Its own frame has u along the blade and w away from the metal, in mm;
 * the origin of that frame lies at (along, height) of the section, and the frame is turned by `tilt`, positive where the
 * far end is the higher one.
 */
export interface Pose {
  readonly along: Mm;
  readonly height: Mm;
  readonly tilt: Degrees;
}

const radians = (degrees: Degrees): number => (degrees * Math.PI) / 180;

/** Where a point of the gauge lies in the section. */
export function toSection({ along, height, tilt }: Pose, u: Mm, w: Mm): SectionPair {
  const cos = Math.cos(radians(tilt));
  const sin = Math.sin(radians(tilt));
  return [along + u * cos - w * sin, height + u * sin + w * cos];
}

/** Points of the section as the gauge has them: [u, w]. */
export function toGauge({ along, height, tilt }: Pose, points: readonly SectionPair[]): readonly SectionPair[] {
  const cos = Math.cos(radians(tilt));
  const sin = Math.sin(radians(tilt));
  return points.map(([s, h]) => {
    const ds = s - along;
    const dh = h - height;
    return [ds * cos + dh * sin, dh * cos - ds * sin] as const;
  });
}
