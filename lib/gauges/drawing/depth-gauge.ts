import type { Degrees, Mm } from "../../math";
import { BAR_LEVEL } from "../body";
import { GAUGES } from "../kinds";
import type { FeetPlacement } from "../placement";
import { scaleLines } from "../vernier";
import { clampedLegs, slottedBar } from "./on-feet";
import { ENGRAVED, engravedNumber } from "./scales";
import {
  arc,
  type Corner,
  type Drawing,
  disc,
  engraved,
  type LensBox,
  label,
  type Mark,
  roundedBox,
  shape,
  stacked,
} from "./shapes";

/** The rod turns a hand, so that a tenth is a step the eye can tell: this much for a mm. */
const TURN_PER_MM: Degrees = 26;
const STEM_HALF = 4.5;
const DIAL = 20;
const LINES_OUT = 18.6;

/** Direction of the hand at a depth: clockwise, upright in the middle of the scale. */
const handAt = (depth: Mm): Degrees => 90 + (3.5 - depth) * TURN_PER_MM;
const on = (pivot: Corner, radius: Mm, angle: Degrees): Corner => arc(pivot, radius, angle, angle, 1)[0];

/** The dial sits over the rod, or beside it where all of the body is on one side. */
const pivotOf = ({ stance }: FeetPlacement): Corner => [stance === "one-side" ? DIAL - 1.4 : 0, 41];

/** The depth gauge with its rod's point `end` mm over the feet (negative in a hollow), its hand at `position`. */
export function drawDepthGauge(placement: FeetPlacement, position: Mm, end: Mm): Drawing {
  const pivot = pivotOf(placement);
  return stacked(
    lensOver(pivot, position),
    rod(end),
    slottedBar(placement),
    dial(pivot),
    hand(pivot, position),
    clampedLegs(placement),
  );
}

/** Point, cone and shaft, and the button on top by which it is pressed down. */
function rod(end: Mm): readonly Mark[] {
  const tip = GAUGES["depth-gauge"].moving?.tip;
  if (tip?.shape !== "point") throw new Error("a depth gauge has a pointed rod");
  const seam = tip.radius * Math.cos((tip.halfAngle * Math.PI) / 180);
  const seamUp = tip.radius * (1 - Math.sin((tip.halfAngle * Math.PI) / 180));
  const coneUp = seamUp + (tip.rodRadius - seam) / Math.tan((tip.halfAngle * Math.PI) / 180);
  const point = arc([0, end + tip.radius], tip.radius, 180 + tip.halfAngle, 360 - tip.halfAngle, 10);
  const top = end + 72;
  return [
    ...shape("moving", [
      [-tip.rodRadius, top],
      [-tip.rodRadius, end + coneUp],
      ...point,
      [tip.rodRadius, end + coneUp],
      [tip.rodRadius, top],
    ]),
    ...shape("screw", roundedBox(-3.2, top - 0.5, 3.2, top + 3, 0.9)),
  ];
}

function dial(pivot: Corner): readonly Mark[] {
  const { range, step } = GAUGES["depth-gauge"];
  if (range === null) throw new Error("a depth gauge has a scale");
  const lines = scaleLines(range.lowest, range.highest, step).map((at) => {
    const tenths = Math.round(at * 10);
    const length = tenths % 10 === 0 ? 3.4 : tenths % 5 === 0 ? 2.6 : 1.7;
    return engraved(on(pivot, LINES_OUT, handAt(at)), on(pivot, LINES_OUT - length, handAt(at)), ENGRAVED);
  });
  const numbers = scaleLines(range.lowest, range.highest, 1).flatMap((at) =>
    label(engravedNumber(at), on(pivot, LINES_OUT - 5.2, handAt(at)), 1.7),
  );
  return [
    ...shape("body", roundedBox(pivot[0] - STEM_HALF, BAR_LEVEL, pivot[0] + STEM_HALF, pivot[1], 1.2)),
    ...shape("body", disc(pivot, DIAL)),
    ...lines,
    ...numbers,
    ...label("mm", [pivot[0], pivot[1] - 5.6], 1.5),
    ...label("0.1", [pivot[0], pivot[1] - 8.6], 1.5),
  ];
}

function hand(pivot: Corner, position: Mm): readonly Mark[] {
  const angle = handAt(position);
  return [
    ...shape("moving", [on(pivot, LINES_OUT - 1.2, angle), ...arc(pivot, 3, angle + 10, angle + 350, 24)]),
    {
      kind: "stroke",
      role: "index",
      from: on(pivot, LINES_OUT - 4.5, angle),
      to: on(pivot, LINES_OUT - 0.4, angle),
      width: ENGRAVED,
    },
    ...shape("screw-face", disc(pivot, 1.7)),
  ];
}

function lensOver(pivot: Corner, position: Mm): LensBox {
  const [u, w] = on(pivot, LINES_OUT - 2.5, handAt(position));
  return { from: [u - 6, w - 5.5], to: [u + 6, w + 5.5], readAt: on(pivot, LINES_OUT - 0.4, handAt(position)) };
}
