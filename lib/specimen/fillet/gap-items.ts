import { imperfection } from "../../imperfections";
import type { MeasuredGap } from "../truth";
import type { FilletTruthItem } from "./fillet-truth";

/** The gap between the plates at the end of a joint where it is wider, where it is recorded; mm. */
export function gapItems(gap: MeasuredGap, length: number): FilletTruthItem[] {
  const { recordedFrom } = imperfection("incorrect-root-gap");
  const isDatum = gap.datum >= gap.farEnd;
  const size = Math.max(gap.datum, gap.farEnd);
  if (size < recordedFrom) return [];
  const x = isDatum ? 0 : length;
  const inward = isDatum ? 2 : -2;
  return [
    {
      id: "gap",
      face: "fillet",
      type: "incorrect-root-gap",
      start: x,
      end: x,
      across: 0,
      size,
      width: null,
      worst: [x, 0],
      outline: [
        [x, -2],
        [x + inward, 0],
        [x, 2],
      ],
      neutral: false,
    },
  ];
}
