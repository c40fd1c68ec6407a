import { tackPlaces } from "../plate";
import type { FaceWork, FeatureRequest } from "../work";

/** A tack within this distance of what is asked is taken; elsewhere the plates were tacked once more; mm. */
const SAME_TACK = 6;

/** Middle of the tack that a request means, mm. */
export function tackNear(work: FaceWork, request: FeatureRequest): number {
  const asked = request.x + request.length / 2;
  return tackPlaces(work).find((tack) => Math.abs(tack - asked) <= SAME_TACK) ?? asked;
}
