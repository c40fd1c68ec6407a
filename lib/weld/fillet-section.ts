import type { Mm } from "../math";

/** A point of a section across a fillet, mm from the root corner: along the base plate and up the standing plate. */
export interface SectionPoint {
  readonly along: Mm;
  readonly up: Mm;
}

/** What is measured of a fillet's section, mm. */
export interface FilletSizes {
  /** From the root corner to each toe, along its plate. */
  readonly baseLeg: Mm;
  readonly standingLeg: Mm;
  /** Shortest distance from the root corner to the face, convexity included. */
  readonly actualThroat: Mm;
  /** Height of the largest isosceles triangle that fits into the section (as ISO 2553 takes the throat, from memory). */
  readonly designThroat: Mm;
  /**
   * Height of the face over the root corner along the bisector, as a throat gauge shows it: the highest that its flat end
   * meets within 0.8 mm of the bisector. Over a flat face sqrt 2 z1 z2 / (z1 + z2) and a little more where the legs differ.
   */
  readonly gaugeThroat: Mm;
  /** How far the face stands out over the straight line from toe to toe; 0 where it nowhere does. */
  readonly convexity: Mm;
  /** How far it falls back behind that line; 0 where it nowhere does. */
  readonly concavity: Mm;
  /** Difference between the legs. */
  readonly asymmetry: Mm;
}

/** Half the flat end of a throat gauge's slide, mm. */
const GAUGE_END = 0.8;

/** Throat of a flat face over two legs at 90 degrees: the height of the right triangle over its longest side. */
export const flatThroat = (leg: Mm, other: Mm): Mm => (leg * other) / Math.hypot(leg, other);

/**
 * Sizes of a fillet at 90 degrees from its face, a chain of points from the base plate's toe to the standing plate's. Throws
 * on fewer than two points.
 */
export function filletSizes(face: readonly SectionPoint[]): FilletSizes {
  if (face.length < 2) throw new Error(`a face of ${face.length} points has no size`);
  const toe = face[0];
  const other = face[face.length - 1];
  const long = Math.hypot(other.along - toe.along, other.up - toe.up);
  // outward is away from the corner
  const outward = { along: (other.up - toe.up) / long, up: (toe.along - other.along) / long };
  let actualThroat = Number.POSITIVE_INFINITY;
  let fits = Number.POSITIVE_INFINITY;
  let gaugeThroat = 0;
  let convexity = 0;
  let concavity = 0;
  face.forEach((point, n) => {
    if (n > 0) {
      actualThroat = Math.min(actualThroat, distanceToCorner(face[n - 1], point));
      gaugeThroat = Math.max(gaugeThroat, heightUnderGauge(face[n - 1], point));
    }
    fits = Math.min(fits, point.along + point.up);
    const over = (point.along - toe.along) * outward.along + (point.up - toe.up) * outward.up;
    convexity = Math.max(convexity, over);
    concavity = Math.max(concavity, -over);
  });
  return {
    baseLeg: toe.along,
    standingLeg: other.up,
    actualThroat,
    designThroat: fits / Math.SQRT2,
    gaugeThroat,
    convexity,
    concavity,
    asymmetry: Math.abs(toe.along - other.up),
  };
}

function distanceToCorner(a: SectionPoint, b: SectionPoint): number {
  const along = b.along - a.along;
  const up = b.up - a.up;
  const length2 = along * along + up * up;
  const t = length2 > 0 ? Math.min(1, Math.max(0, -(a.along * along + a.up * up) / length2)) : 0;
  return Math.hypot(a.along + t * along, a.up + t * up);
}

/** Largest height over the corner of the part of a line that lies under the gauge's end; 0 where none does. */
function heightUnderGauge(a: SectionPoint, b: SectionPoint): number {
  const [va, vb] = [a, b].map(({ along, up }) => (along - up) / Math.SQRT2);
  const [za, zb] = [a, b].map(({ along, up }) => (along + up) / Math.SQRT2);
  const low = Math.max(Math.min(va, vb), -GAUGE_END);
  const high = Math.min(Math.max(va, vb), GAUGE_END);
  if (low > high) return 0;
  if (va === vb) return Math.max(za, zb);
  const heightAt = (v: number) => za + ((zb - za) * (v - va)) / (vb - va);
  return Math.max(heightAt(low), heightAt(high));
}
