import type { Dimension, Face } from "../weld";
import { probeAngles, probeSteps } from "./joint-items";
import { crownAlong, widthNear } from "./measure";
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
 * plates at its toes, step and angle between the plates. Root: height of the crown. Each with its largest value, never
 * below 0, and what it is along the weld.
 */
export function dimensionsOf(work: FaceWork): DimensionTruth[] {
  return PROBES[work.face].map(({ dimension, probe }) => largest(dimension, probe(work)));
}

type Probe = (work: FaceWork) => Probed;

const CROWN: Probe = (work) => alongWeld(work, crownAlong(work));

const PROBES: Readonly<Record<Face, readonly { readonly dimension: Dimension; readonly probe: Probe }[]>> = {
  cap: [
    { dimension: "weld-width", probe: (work) => alongWeld(work, (x) => widthNear(work, x)) },
    { dimension: "cap-height", probe: CROWN },
    { dimension: "linear-misalignment", probe: (work) => evenly(probeSteps(work, work.joint.length)) },
    {
      dimension: "angular-misalignment",
      probe: (work) => evenly(probeAngles(work).map(({ x, angle }) => ({ x, value: Math.abs(angle) }))),
    },
  ],
  root: [{ dimension: "root-height", probe: CROWN }],
};

function alongWeld({ joint }: FaceWork, at: (x: number) => number): Probed {
  const { every, fromEnds } = PROBED;
  const count = Math.floor((joint.length - 2 * fromEnds) / every) + 1;
  return { from: fromEnds, step: every, values: Array.from({ length: count }, (_, n) => at(fromEnds + n * every)) };
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
