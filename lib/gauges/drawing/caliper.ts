import type { Mm } from "../../math";
import { GAUGES } from "../kinds";
import { BEAM } from "../placement";
import { lensOver, millimetreScale, type Track, tenthsVernier } from "./scales";
import { type Corner, type Drawing, label, type Mark, roundedBox, shape, stacked, thumbScrew } from "./shapes";

/** Thickness of a jaw at its tip and where it leaves the beam. */
const JAW = { tip: 3, root: 9 } as const;
/** The beam goes on beyond the end of its scale by this. */
const BEYOND: Mm = 22;
/** Where its scale has its nought, over the fixed jaw's face. */
const NOUGHT: Mm = 9;
/** Both scales meet at this line of the beam. */
const EDGE: Mm = BEAM.from + 4;
/** The plate that carries the vernier, and the strap round the beam's other edge. */
const SLIDER = { inside: 3, outside: 4, strap: 1, below: 2, over: 26 } as const;

/** The fixed jaw with the beam and its scale, in millimetres. */
function fixed(main: Track, most: Mm): readonly Mark[] {
  const top = NOUGHT + most + BEYOND;
  const outline: readonly Corner[] = [
    [0, 0],
    [BEAM.from, 0],
    [BEAM.from, top],
    [BEAM.to, top],
    [BEAM.to, -JAW.root],
    [BEAM.from - 3, -JAW.root],
    [0, -JAW.tip],
  ];
  return [
    ...shape("body", outline),
    ...millimetreScale(main, 0, most),
    ...label("mm", [(BEAM.from + BEAM.to) / 2, top - 4], 1.5),
  ];
}

/** The jaw that slides, `end` mm over the fixed one, with the plate that carries its vernier. */
function slider(end: Mm): readonly Mark[] {
  const jaw: readonly Corner[] = [
    [0, end],
    [BEAM.from, end],
    [BEAM.from, end + JAW.root],
    [BEAM.from - 3, end + JAW.root],
    [0, end + JAW.tip],
  ];
  const [low, high] = [end - SLIDER.below, end + SLIDER.over];
  return [
    ...shape("moving", jaw),
    ...shape("leg", roundedBox(BEAM.from - SLIDER.inside, low, EDGE, high, 0.05)),
    ...shape("leg", roundedBox(BEAM.to - SLIDER.strap, low, BEAM.to + SLIDER.outside, high, 0.8)),
    ...label("1/10", [EDGE - 3.4, high - 3], 1.4),
    ...thumbScrew([BEAM.to + 1.5, end + 12], 2.2, 35),
  ];
}

/** The caliper with its jaws `end` mm apart while its vernier stands at `position`. */
export function drawCaliper(position: Mm, end: Mm): Drawing {
  const { range } = GAUGES.caliper;
  if (range === null) throw new Error("a caliper has a scale");
  const main: Track = { origin: [EDGE, NOUGHT], along: [0, 1], out: [1, 0] };
  const vernier: Track = { ...main, out: [-1, 0] };
  return stacked(
    lensOver(main, position),
    fixed(main, range.highest + 12),
    slider(end),
    tenthsVernier(vernier, position),
  );
}
