import type { Surface } from "../../surface";
import { type Dimension, FILLET_ENDS, type FilletSizes } from "../../weld";
import type { DimensionTruth } from "../truth";
import { sizesAt } from "./section";

/** Sizes at a place along the weld, mm. */
export interface SizesAt {
  readonly x: number;
  readonly sizes: FilletSizes;
}

/** A weld is looked at every so many mm. */
const STEP = 1;

/** Every mm of a weld with its sizes, without its start and finish; places without weld are left out. */
export function sizesAlong({ strip }: Pick<Surface, "strip">): SizesAt[] {
  const { grid } = strip;
  const length = grid.columns / grid.perMm;
  const all: SizesAt[] = [];
  for (let x = STEP; x < length; x += STEP) {
    const sizes = sizesAt(strip, x);
    if (sizes) all.push({ x, sizes });
  }
  const from = all[0]?.x ?? 0;
  const to = all[all.length - 1]?.x ?? 0;
  return all.filter(({ x }) => x >= from + FILLET_ENDS && x <= to - FILLET_ENDS);
}

const hundredths = (value: number): number => Math.round(value * 100) / 100;

/** Half the thickness of a gauge's blade, mm: of what lies under it the largest counts. */
const BLADE = 1.5;

/** What a gauge shows from place to place along the weld: under its blade the largest of what was measured every mm. */
export const asGaugesShow = (along: readonly SizesAt[], size: (sizes: FilletSizes) => number): number[] =>
  along.map(({ x }) =>
    Math.max(...along.filter((near) => Math.abs(near.x - x) <= BLADE).map(({ sizes }) => size(sizes))),
  );

export const shorterLeg = ({ baseLeg, standingLeg }: FilletSizes): number => Math.min(baseLeg, standingLeg);

/** What is measured at a station, and which size of the section it is. */
const AT_STATION = [
  ["base-leg", ({ baseLeg }) => baseLeg],
  ["standing-leg", ({ standingLeg }) => standingLeg],
  ["throat", ({ gaugeThroat }) => gaugeThroat],
] as const satisfies readonly (readonly [Dimension, (sizes: FilletSizes) => number])[];

/**
 * Legs and throat at the stations, in their order, then the smallest leg and the smallest throat along the whole weld but its
 * start and finish; each as a gauge shows it. Throws where a station has no weld.
 */
export function dimensionTruths(
  surface: Pick<Surface, "strip">,
  along: readonly SizesAt[],
  stations: readonly number[],
): DimensionTruth[] {
  return [
    ...stations.flatMap((x, n) => {
      const under = [x - STEP, x, x + STEP].flatMap((at) => sizesAt(surface.strip, at) ?? []);
      if (under.length === 0) throw new Error(`no weld at station ${n + 1}, ${x} mm`);
      return AT_STATION.map(([dimension, size]): DimensionTruth => {
        const value = hundredths(Math.max(...under.map(size)));
        return { dimension, station: n + 1, value, at: x, along: null };
      });
    }),
    least("smallest-leg", along, shorterLeg),
    least("smallest-throat", along, ({ gaugeThroat }) => gaugeThroat),
  ];
}

function least(dimension: Dimension, along: readonly SizesAt[], size: (sizes: FilletSizes) => number): DimensionTruth {
  const shown = asGaugesShow(along, size).map(hundredths);
  const best = shown.indexOf(Math.min(...shown));
  const from = along[0].x;
  const count = Math.round((along[along.length - 1].x - from) / STEP) + 1;
  const values = Array.from({ length: count }, (_, n) => {
    const place = along.findIndex(({ x }) => x === from + n * STEP);
    return place < 0 ? null : shown[place];
  });
  return { dimension, station: null, value: shown[best], at: along[best].x, along: { from, step: STEP, values } };
}
