import type { Mm } from "../../math";
import { BAR_LEVEL, GUIDE_HALF, undersideOf } from "../body";
import { GAUGES } from "../kinds";
import { type FeetPlacement, feetOf, type HookPlacement } from "../placement";
import { lensOver, millimetreScale, type Track, tenthsVernier } from "./scales";
import { type Drawing, EMPTY, label, roundedBox, type Spot2, shape, stacked, thumbScrew } from "./shapes";

const BAR_TOP = 18;
const COLUMN_TOP = 64;
/** Where the main scales have their nought, over the line of the feet. */
const HEIGHT_NOUGHT = 32;
const HOOK_NOUGHT = 46;
const SLIDE_HALF = 2.6;

/** Bar with its slot, and a leg clamped into it over every foot. */
export function barOnFeet(placement: FeetPlacement): Drawing {
  const bar = undersideOf(placement).find(({ part }) => part === "body");
  if (!bar) throw new Error(`${placement.kind} has no bar`);
  const [from, to] = [bar.from - 4, bar.to + 4];
  const legs = feetOf(placement).map(({ from: left, to: right }) => leg((left + right) / 2, (right - left) / 2));
  return stacked(
    shape("body", roundedBox(from, BAR_LEVEL, to, BAR_TOP, 1.6)),
    shape("recess", roundedBox(from + 2.5, 11.6, to - 2.5, 14.4, 1.4)),
    ...legs,
  );
}

function leg(middle: Mm, half: Mm): Drawing {
  const side = (sign: 1 | -1): Spot2[] => [
    [middle + sign * half, 0],
    [middle + sign * half, 2.6],
    [middle + sign * 2.8, 6],
    [middle + sign * 2.8, 18.9],
  ];
  const outline = [...side(1), [middle + 2.2, 19.5], [middle - 2.2, 19.5], ...side(-1).reverse()] as const;
  return stacked(shape("leg", outline), thumbScrew([middle, 13], 3.6, 25 + 40 * middle));
}

/** The plate that carries a main scale, with the groove that guides the slide. */
function column(track: Track, from: Mm, to: Mm): Drawing {
  return stacked(
    shape("body", roundedBox(-GUIDE_HALF, BAR_LEVEL, GUIDE_HALF, COLUMN_TOP, 2.4)),
    shape("recess", roundedBox(-SLIDE_HALF - 0.5, BAR_LEVEL, SLIDE_HALF + 0.1, COLUMN_TOP, 0.05)),
    millimetreScale(track, from, to, 5),
    label("mm", [6, COLUMN_TOP - 3.4], 1.5),
    label("1/10", [-6.1, COLUMN_TOP - 3.4], 1.5),
    thumbScrew([-6.1, 24], 2.4, 70),
  );
}

function slide(lowEnd: readonly Spot2[], length: Mm): Drawing {
  return shape("moving", [
    ...lowEnd,
    [SLIDE_HALF, length - 1],
    [SLIDE_HALF - 1, length],
    [-SLIDE_HALF + 1, length],
    [-SLIDE_HALF, length - 1],
  ]);
}

/** The height gauge with its slide's end `end` mm over the feet while its vernier stands at `position`. */
export function drawHeightGauge(placement: FeetPlacement, position: Mm, end: Mm): Drawing {
  const range = GAUGES["height-gauge"].range;
  if (range === null) throw new Error("a height gauge has a scale");
  const main: Track = { origin: [SLIDE_HALF, HEIGHT_NOUGHT], along: [0, 1], out: [1, 0] };
  const vernier: Track = { ...main, out: [-1, 0] };
  const half = 0.8;
  const slideEnd: readonly Spot2[] = [
    [-SLIDE_HALF, end + 5],
    [-half, end + 2],
    [-half, end],
    [half, end],
    [half, end + 2],
    [SLIDE_HALF, end + 5],
  ];
  return stacked(
    barOnFeet(placement),
    column(main, range.lowest, range.highest),
    slide(slideEnd, end + 68),
    tenthsVernier(vernier, position),
    stop(end + 68),
    { ...EMPTY, lens: lensOver(main, position) },
  );
}

/** The head by which a slide is moved. */
const stop = (top: Mm): Drawing => shape("moving", roundedBox(-5, top - 0.6, 5, top + 2.6, 0.8));

/** The hook gauge: a sole on one plate, an arm over the weld, and a slide with a foot for the other plate. */
export function drawHookGauge(placement: HookPlacement, position: Mm, end: Mm): Drawing {
  const range = GAUGES["hook-gauge"].range;
  if (range === null) throw new Error("a hook gauge has a scale");
  const [{ from, to }] = feetOf(placement);
  const main: Track = { origin: [SLIDE_HALF, HOOK_NOUGHT], along: [0, -1], out: [1, 0] };
  const vernier: Track = { ...main, out: [-1, 0] };
  const foot: readonly Spot2[] = [
    [-SLIDE_HALF, end + 3],
    [-1.5, end + 2],
    [-1.5, end],
    [1.5, end],
    [1.5, end + 2],
    [SLIDE_HALF, end + 3],
  ];
  const arm: readonly Spot2[] = [
    [-GUIDE_HALF, BAR_LEVEL],
    [from, BAR_LEVEL],
    [from, 0],
    [to, 0],
    [to, BAR_TOP - 3],
    [to - 3, BAR_TOP],
    [-GUIDE_HALF, BAR_TOP],
  ];
  return stacked(
    shape("body", arm),
    column(main, range.lowest, range.highest),
    slide(foot, end + 72),
    tenthsVernier(vernier, position),
    stop(end + 72),
    thumbScrew([(from + to) / 2, 11.5], 3, 15),
    { ...EMPTY, lens: lensOver(main, position) },
  );
}
