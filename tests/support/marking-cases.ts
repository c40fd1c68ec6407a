import fc from "fast-check";
import { CLUTTER, type ImperfectionType } from "../../lib/imperfections";
import type { Call } from "../../lib/report";
import type { ClutterItem, TruthItem } from "../../lib/specimen";
import type { ButtJoint, FilletJoint } from "../../lib/weld";

/** One face with its truth and a report on it; everything lies on the cap face. */
export interface MarkingCase {
  readonly items: readonly TruthItem[];
  readonly calls: readonly Call[];
}

/** Sized and unsized lines and points, look-alikes and strangers. */
const TYPES = [
  "continuous-undercut",
  "intermittent-undercut",
  "overlap",
  "excess-weld-metal",
  "surface-pore",
  "transverse-crack",
  "crater-pipe",
  "longitudinal-crack",
  "linear-misalignment",
] as const satisfies readonly ImperfectionType[];
const POINTS: readonly ImperfectionType[] = ["surface-pore", "transverse-crack", "crater-pipe"];
const UNSIZED: readonly ImperfectionType[] = ["overlap", "transverse-crack", "longitudinal-crack"];

/** A tenth of a millimetre is the step of everything written. */
const tenths = (value: number): number => Math.round(value * 10) / 10;
const within = (value: number, low: number, high: number): number => tenths(Math.min(high, Math.max(low, value)));

export function truthItem(values: Partial<TruthItem> & { id: string; type: ImperfectionType }): TruthItem {
  const item = {
    face: "cap",
    start: 0,
    end: 0,
    across: 0,
    size: null,
    width: null,
    neutral: false,
    ...values,
  } as const;
  return {
    ...item,
    worst: [item.start, item.across],
    outline: [
      [item.start, item.across],
      [item.end, item.across],
      [item.end, item.across + 1],
    ],
  };
}

/** Clutter on the cap face whose outline is a box `reach` mm to either side of its middle. */
export function clutterItem(
  values: Pick<ClutterItem, "id" | "kind" | "start" | "end" | "across"> & { face?: ClutterItem["face"] },
  reach: number,
): ClutterItem {
  const { start, end, across } = values;
  return {
    face: "cap",
    ...values,
    outline: [
      [start, across - reach],
      [end, across - reach],
      [end, across + reach],
      [start, across + reach],
    ],
  };
}

/** Clutter strewn over the part of the cap face that the random truths and calls lie on. */
export const strewnClutter: fc.Arbitrary<readonly ClutterItem[]> = fc
  .array(
    fc.record({
      kind: fc.constantFrom(...CLUTTER),
      start: fc.integer({ min: 0, max: 1200 }),
      length: fc.integer({ min: 0, max: 400 }),
      across: fc.integer({ min: -150, max: 150 }),
      reach: fc.integer({ min: 1, max: 80 }),
    }),
    { maxLength: 6 },
  )
  .map((list) =>
    list.map(({ kind, start, length, across, reach }, n) =>
      clutterItem(
        { id: `cap-clutter-${n + 1}`, kind, start: start / 10, end: (start + length) / 10, across: across / 10 },
        reach / 10,
      ),
    ),
  );

/** What is not marked of a joint, but belongs to it. */
export const BUTT_JOINT: ButtJoint = {
  kind: "butt",
  process: "111",
  position: "PA",
  length: 300,
  width: 150,
  thickness: 10,
  grooveAngle: 60,
  rootGap: 2.5,
  rootFace: 1.5,
};
export const FILLET_JOINT: FilletJoint = {
  kind: "fillet",
  process: "135",
  position: "PB",
  length: 200,
  baseThickness: 12,
  standingThickness: 8,
  size: { symbol: "a", value: 4 },
  angle: 90,
};

export function call(values: Partial<Call> & { id: string }): Call {
  return { face: "cap", type: null, start: null, end: null, across: null, size: null, sentence: null, ...values };
}

/** What an inspector without error would write. */
export function exactCall(item: TruthItem, id: string): Call {
  const { face, type, start, end, across, size } = item;
  return { id, face, type, start, end: start === end ? null : end, across, size, sentence: null };
}

const truthSpec = fc.record({
  type: fc.constantFrom(...TYPES),
  start: fc.integer({ min: 0, max: 1200 }),
  length: fc.oneof(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 1500 })),
  across: fc.integer({ min: -90, max: 90 }),
  size: fc.integer({ min: 2, max: 60 }),
  neutral: fc.nat(5),
});

/** A call near a truth, as a piece of it, or anywhere. */
const callSpec = fc.record({
  kind: fc.nat(9),
  of: fc.nat(),
  from: fc.integer({ min: 0, max: 100 }),
  to: fc.integer({ min: 0, max: 100 }),
  shiftStart: fc.integer({ min: -150, max: 150 }),
  shiftEnd: fc.integer({ min: -150, max: 150 }),
  shiftAcross: fc.integer({ min: -60, max: 60 }),
  shiftSize: fc.integer({ min: -20, max: 20 }),
  accuracy: fc.constantFrom(0, 0.1, 0.4, 1),
  type: fc.nat(TYPES.length * 2),
});

type Values<T> = T extends fc.Arbitrary<infer U> ? U : never;

function toTruth(spec: Values<typeof truthSpec>, index: number): TruthItem {
  const start = spec.start / 10;
  const isPoint = POINTS.includes(spec.type);
  return truthItem({
    id: `cap-${index + 1}`,
    type: spec.type,
    start,
    end: isPoint ? start : tenths(start + spec.length / 10),
    across: spec.across / 10,
    size: UNSIZED.includes(spec.type) ? null : spec.size / 10,
    neutral: spec.neutral === 0,
  });
}

function toCall(spec: Values<typeof callSpec>, index: number, items: readonly TruthItem[]): Call {
  const id = `call-${index + 1}`;
  const anywhere = truthItem({
    id,
    type: TYPES[spec.type % TYPES.length],
    start: spec.from,
    end: spec.from + spec.to / 5,
    across: spec.shiftAcross / 6,
    size: 1,
  });
  const near = spec.kind === 0 || items.length === 0 ? anywhere : items[spec.of % items.length];
  const length = near.end - near.start;
  const isPiece = spec.kind >= 5 && length > 0;
  const from = isPiece ? near.start + (length * Math.min(spec.from, spec.to)) / 100 : near.start;
  const to = isPiece ? near.start + (length * Math.max(spec.from, spec.to)) / 100 : near.end;
  const start = within(from + (spec.accuracy * spec.shiftStart) / 10, 0, 300);
  const end = Math.max(start, within(to + (spec.accuracy * spec.shiftEnd) / 10, 0, 300));
  return call({
    id,
    type: spec.type === 2 * TYPES.length ? null : spec.type < TYPES.length ? TYPES[spec.type] : near.type,
    start: spec.kind === 1 && spec.from > 80 ? null : start,
    end: near.start === near.end && spec.kind === 2 ? null : end,
    across: within(near.across + (spec.accuracy * spec.shiftAcross) / 10, -75, 75),
    size: spec.kind === 3 ? null : within((near.size ?? 1) + (spec.accuracy * spec.shiftSize) / 10, 0, 50),
  });
}

/** Random faces, much more crowded than an assessment would be, so that calls and truths compete. */
export function markingCases(most: { truths: number; calls: number }): fc.Arbitrary<MarkingCase> {
  return fc
    .record({
      truths: fc.array(truthSpec, { minLength: 0, maxLength: most.truths }),
      calls: fc.array(callSpec, { minLength: 0, maxLength: most.calls }),
    })
    .map(({ truths, calls }) => {
      const items = truths.map(toTruth);
      return { items, calls: calls.map((spec, index) => toCall(spec, index, items)) };
    });
}
