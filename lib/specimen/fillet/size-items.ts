import { type ImperfectionType, imperfection } from "../../imperfections";
import type { FilletSizes } from "../../weld";
import { longestStretch } from "../measure";
import type { Point } from "../truth";
import type { SizesAt } from "./dimensions";
import type { FilletTruthItem } from "./fillet-truth";

type SizeType = Extract<
  ImperfectionType,
  "excessive-convexity" | "excessive-asymmetry" | "insufficient-throat" | "excessive-throat"
>;

/** How far a section departs from what it should be, mm; a throat is taken without convexity. */
const DEPARTURES: Readonly<Record<SizeType, (sizes: FilletSizes, requiredThroat: number) => number>> = {
  "excessive-convexity": ({ convexity }) => convexity,
  "excessive-asymmetry": ({ asymmetry }) => asymmetry,
  "insufficient-throat": ({ designThroat }, required) => required - designThroat,
  "excessive-throat": ({ designThroat }, required) => designThroat - required,
};
const SIZE_TYPES = Object.keys(DEPARTURES) as SizeType[];

/** Good stretches up to this length do not end a bad one, mm. */
const BRIDGE = 4;
/** A departure is shown along the toes every so many mm. */
const OUTLINED = 4;

/**
 * Stretches where a fillet's sections, as measured along the whole weld, depart by the catalogue's recordable size or more over
 * its recordable length or more: size = largest departure, extent = where it reaches the recordable size.
 */
export function sizeItems(along: readonly SizesAt[], requiredThroat: number): FilletTruthItem[] {
  return SIZE_TYPES.flatMap((type) => stretchesOf(type, along, requiredThroat));
}

function stretchesOf(type: SizeType, along: readonly SizesAt[], requiredThroat: number): FilletTruthItem[] {
  const { recordedFrom, recordedLength } = imperfection(type);
  const step = along.length > 1 ? along[1].x - along[0].x : 1;
  const found: FilletTruthItem[] = [];
  const departures = along.map(({ sizes }) => DEPARTURES[type](sizes, requiredThroat));
  const isBad = departures.map((departure) => departure >= recordedFrom);
  for (let left = true; left; ) {
    const stretch = longestStretch(isBad, Math.round(BRIDGE / step));
    left = false;
    if (!stretch) break;
    const { first, last } = stretch;
    isBad.fill(false, first, last + 1);
    if (along[last].x - along[first].x + step < recordedLength) break;
    left = true;
    let worst = first;
    for (let n = first; n <= last; n++) if (departures[n] > departures[worst]) worst = n;
    found.push(sizeItem(type, along.slice(first, last + 1), along[worst], departures[worst], step));
  }
  return found;
}

function sizeItem(
  type: SizeType,
  within: readonly SizesAt[],
  worst: SizesAt,
  size: number,
  step: number,
): FilletTruthItem {
  const shown = within.filter((_, n) => n % OUTLINED === 0 || n === within.length - 1);
  const base = shown.map(({ x, sizes }): Point => [x, sizes.baseLeg / Math.SQRT2]);
  const standing = shown.map(({ x, sizes }): Point => [x, -sizes.standingLeg / Math.SQRT2]);
  return {
    id: type,
    face: "fillet",
    type,
    start: within[0].x - step / 2,
    end: within[within.length - 1].x + step / 2,
    across: (worst.sizes.baseLeg - worst.sizes.standingLeg) / (2 * Math.SQRT2),
    size,
    width: null,
    worst: [worst.x, 0],
    outline: [...base, ...standing.reverse()],
    neutral: false,
  };
}
