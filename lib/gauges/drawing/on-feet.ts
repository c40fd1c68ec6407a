import type { Mm } from "../../math";
import { BAR_LEVEL, GUIDE_HALF, undersideOf } from "../body";
import { GAUGES } from "../kinds";
import { type FeetPlacement, feetOf, type HookPlacement } from "../placement";
import { lensOver, millimetreScale, type Track, tenthsVernier } from "./scales";
import { type Corner, type Drawing, label, type Mark, roundedBox, shape, stacked, thumbScrew } from "./shapes";

const BAR_TOP = 18;
const COLUMN_TOP = 64;
/** Where the main scales have their nought, over the line of the feet. */
const HEIGHT_NOUGHT = 32;
const HOOK_NOUGHT = 46;
const SLIDE_HALF = 2.6;

/** The bar with the slot in which the feet's legs are clamped. */
export function slottedBar(placement: FeetPlacement): readonly Mark[] {
  const bar = undersideOf(placement).find(({ part }) => part === "body");
  if (!bar) throw new Error(`${placement.kind} has no bar`);
  // past its feet the bar goes on a little; where it ends at the rod it ends there
  const [from, to] = [bar.from > -GUIDE_HALF ? bar.from : bar.from - 4, bar.to + 4];
  return [
    ...shape("body", roundedBox(from, BAR_LEVEL, to, BAR_TOP, 1.6)),
    ...shape("recess", roundedBox(from + 2.5, 11.6, to - 2.5, 14.4, 1.4)),
  ];
}

/** A leg over every foot, each with its screw. */
export const clampedLegs = (placement: FeetPlacement): readonly Mark[] =>
  feetOf(placement).flatMap(({ from, to }, n) => leg((from + to) / 2, (to - from) / 2, 25 + 65 * n));

function leg(middle: Mm, half: Mm, slotTurn: number): readonly Mark[] {
  const side = (sign: 1 | -1): Corner[] => [
    [middle + sign * half, 0],
    [middle + sign * half, 2.6],
    [middle + sign * 2.6, 6],
    [middle + sign * 2.6, 18.9],
  ];
  const outline = [...side(1), [middle + 2, 19.5], [middle - 2, 19.5], ...side(-1).reverse()] as const;
  return [...shape("leg", outline), ...thumbScrew([middle, 13], 3.2, slotTurn)];
}

/** The plate that carries a main scale, with the groove that guides the slide. */
const column = (track: Track, from: Mm, to: Mm): readonly Mark[] => [
  ...shape("body", roundedBox(-GUIDE_HALF, BAR_LEVEL, GUIDE_HALF, COLUMN_TOP, 2.4)),
  ...shape("recess", roundedBox(-SLIDE_HALF - 0.5, BAR_LEVEL, SLIDE_HALF, COLUMN_TOP, 0.05)),
  ...millimetreScale(track, from, to),
  ...label("mm", [6.3, COLUMN_TOP - 3.4], 1.5),
  ...label("1/10", [-6.4, COLUMN_TOP - 3.4], 1.4),
  ...thumbScrew([-6.3, 26], 2.4, 70),
];

/** A slide from its lower end to the head by which it is moved. */
const slide = (lowEnd: readonly Corner[], top: Mm): readonly Mark[] => [
  ...shape("moving", [...lowEnd, [SLIDE_HALF, top], [-SLIDE_HALF, top]]),
  ...shape("moving", roundedBox(-5, top - 0.6, 5, top + 2.6, 0.8)),
];

/** The height gauge with its slide's end `end` mm over the feet while its vernier stands at `position`. */
export function drawHeightGauge(placement: FeetPlacement, position: Mm, end: Mm): Drawing {
  const range = GAUGES["height-gauge"].range;
  if (range === null) throw new Error("a height gauge has a scale");
  const main: Track = { origin: [SLIDE_HALF, HEIGHT_NOUGHT], along: [0, 1], out: [1, 0] };
  const vernier: Track = { ...main, out: [-1, 0] };
  const half = 0.8;
  const slideEnd: readonly Corner[] = [
    [-SLIDE_HALF, end + 5],
    [-half, end + 2],
    [-half, end],
    [half, end],
    [half, end + 2],
    [SLIDE_HALF, end + 5],
  ];
  return stacked(
    lensOver(main, position),
    slottedBar(placement),
    column(main, range.lowest, range.highest),
    slide(slideEnd, end + 68),
    tenthsVernier(vernier, position),
    clampedLegs(placement),
  );
}

/** The hook gauge: a sole on one plate, an arm over the weld, and a slide with a foot for the other plate. */
export function drawHookGauge(placement: HookPlacement, position: Mm, end: Mm): Drawing {
  const range = GAUGES["hook-gauge"].range;
  if (range === null) throw new Error("a hook gauge has a scale");
  const [{ from, to }] = feetOf(placement);
  const main: Track = { origin: [SLIDE_HALF, HOOK_NOUGHT], along: [0, -1], out: [1, 0] };
  const vernier: Track = { ...main, out: [-1, 0] };
  const foot: readonly Corner[] = [
    [-SLIDE_HALF, end + 3],
    [-1.5, end + 2],
    [-1.5, end],
    [1.5, end],
    [1.5, end + 2],
    [SLIDE_HALF, end + 3],
  ];
  const arm: readonly Corner[] = [
    [0, BAR_LEVEL],
    [from, BAR_LEVEL],
    [from, 0],
    [to, 0],
    [to, BAR_TOP - 3],
    [to - 3, BAR_TOP],
    [0, BAR_TOP],
  ];
  return stacked(
    lensOver(main, position),
    shape("body", arm),
    column(main, range.lowest, range.highest),
    slide(foot, end + 72),
    tenthsVernier(vernier, position),
    thumbScrew([(from + to) / 2, 11.5], 3, 15),
  );
}
