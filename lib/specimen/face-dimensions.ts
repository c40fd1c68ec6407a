import { median } from "../math";
import { columnX, rowY } from "../surface";
import type { Dimension, Face } from "../weld";
import { probeAngles, probeSteps } from "./joint-items";
import { crownsShown, widthNear } from "./measure";
import { parentHeight } from "./parent";
import type { DimensionTruth } from "./truth";
import type { FaceWork } from "./work";

/** The weld is measured every so many mm, but not on its ends, which are cut and ground. */
const PROBED = { every: 1, fromEnds: 5 };

/** Values from place to place, evenly apart; NaN where there is nothing to measure. */
interface Probed {
  readonly from: number;
  readonly step: number;
  readonly values: readonly number[];
}

/**
 * The dimensions that one finished face shows. Cap: weld width (toe to toe), height of the crown over the line between the
 * plates at its toes as a gauge shows it, step and angle between the plates. Root: height of the crown. Each with its largest value, never
 * below 0, and what it is along the weld.
 */
export function dimensionsOf(work: FaceWork): DimensionTruth[] {
  return PROBES[work.face].map(({ dimension, probe }) => largest(dimension, probe(work)));
}

type Probe = (work: FaceWork) => Probed;

const CROWN: Probe = (work) => alongWeld(work, (xs) => crownsShown(work, xs));

const PROBES: Readonly<Record<Face, readonly { readonly dimension: Dimension; readonly probe: Probe }[]>> = {
  cap: [
    { dimension: "weld-width", probe: (work) => alongWeld(work, (xs) => xs.map((x) => widthNear(work, x))) },
    { dimension: "cap-height", probe: CROWN },
    { dimension: "linear-misalignment", probe: (work) => evenly(probeSteps(work, work.joint.length)) },
    {
      dimension: "angular-misalignment",
      probe: (work) => evenly(probeAngles(work).map(({ x, angle }) => ({ x, value: Math.abs(angle) }))),
    },
  ],
  root: [{ dimension: "root-height", probe: CROWN }],
};

function alongWeld({ joint }: FaceWork, at: (xs: readonly number[]) => readonly number[]): Probed {
  const { every, fromEnds } = PROBED;
  const count = Math.floor((joint.length - 2 * fromEnds) / every) + 1;
  const xs = Array.from({ length: count }, (_, n) => fromEnds + n * every);
  return { from: fromEnds, step: every, values: at(xs) };
}

const evenly = (felt: readonly { readonly x: number; readonly value: number }[]): Probed => ({
  from: felt[0].x,
  step: felt[1].x - felt[0].x,
  values: felt.map(({ value }) => value),
});

const hundredths = (value: number): number => Math.round(value * 100) / 100;

function largest(dimension: Dimension, { from, step, values }: Probed): DimensionTruth {
  const best = values.reduce((top, value, n) => (value > values[top] || Number.isNaN(values[top]) ? n : top), 0);
  return {
    dimension,
    station: null,
    value: Math.max(0, hundredths(values[best])),
    at: from + best * step,
    along: { from, step, values: values.map((value) => (Number.isNaN(value) ? null : hundredths(value))) },
  };
}

/** The plates are felt between these distances from the weld's centre line, mm, every so many pixels: as far in as a caliper's jaws reach, not on their worn edges. */
const FELT = { from: 45, to: 72, every: 7 };

/**
 * How far the skin of a finished face stands over the plates' own geometry, mm: the median over both plates beside their
 * long edges. Half the sheet's thickness and this are how far the face lies from the sheet's middle.
 */
export function skinOf({ face, joint, plates, sides }: FaceWork): number {
  const over: number[] = [];
  for (const { grid, z } of sides) {
    for (let j = 0; j < grid.rows; j += FELT.every) {
      const y = rowY(grid, j);
      if (Math.abs(y) < FELT.from || Math.abs(y) > FELT.to) continue;
      for (let i = 0; i < grid.columns; i += FELT.every) {
        over.push(z[j * grid.columns + i] - parentHeight(face, joint, plates, columnX(grid, i), y));
      }
    }
  }
  return median(over);
}

/** Thickness of the plates from how far each finished face lies from the sheet's middle, mm. */
export const thicknessTruth = (fromMiddle: readonly number[]): DimensionTruth => ({
  dimension: "plate-thickness",
  station: null,
  value: hundredths(fromMiddle.reduce((sum, one) => sum + one, 0)),
  at: null,
  along: null,
});
