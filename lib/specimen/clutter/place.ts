import { middleOfWeld, toeAt } from "../runs/edit";
import type { FaceWork, FeatureRequest } from "../work";
import type { MarkPlace } from "./mark-shapes";

const TOE_AVERAGED = 3;

/**
 * Middle of a mark: along in the middle of what was asked, across as asked, or else `out` mm outside the toe of the
 * asked side (negative: on the weld).
 */
export function besideToe(work: FaceWork, request: FeatureRequest, out: number): MarkPlace {
  const { x, length, y } = request;
  const middle = x + length / 2;
  const side = y === undefined ? request.side : y < 0 ? -1 : 1;
  return { x: middle, y: y ?? toeAt(work, side, middle, TOE_AVERAGED) + side * out, side };
}

/** Middle of a mark that goes right over the weld. */
export function overWeld(work: FaceWork, request: FeatureRequest): MarkPlace {
  const middle = request.x + request.length / 2;
  return { x: middle, y: middleOfWeld(work, middle), side: request.side };
}
