import type { Mm } from "../math";
import { type Aspect, faceOf } from "../weld";
import type { Place } from "./viewport";

/** Heights of what is seen from an aspect, mm; null while they are not known, when plates count as even and unwelded. */
export type HeightAt = ((x: Mm, y: Mm) => Mm) | null;

const signOf = (aspect: Aspect): 1 | -1 => (aspect === "standing" ? -1 : 1);

/** The place on the piece, as reports name it, under a place seen from an aspect; `heightAt` belongs to that aspect. */
export function onFace(aspect: Aspect, place: Place, heightAt: HeightAt): Place {
  if (aspect === faceOf(aspect)) return place;
  const height = heightAt?.(place.x, place.y) ?? 0;
  return { x: place.x, y: (place.y - signOf(aspect) * height) / Math.SQRT2 };
}

/**
 * Where a place on the piece is seen from an aspect; `heightAt` belongs to the face itself. Null where it lies behind the
 * other plate's face.
 */
export function seenPlace(aspect: Aspect, place: Place, heightAt: HeightAt): Place | null {
  if (aspect === faceOf(aspect)) return place;
  const height = heightAt?.(place.x, place.y) ?? Math.abs(place.y);
  const y = (place.y + signOf(aspect) * height) / Math.SQRT2;
  return signOf(aspect) * y < HIDDEN ? null : { x: place.x, y };
}

/** So near to the root corner the other plate is in the way, mm. */
const HIDDEN: Mm = 0.3;
