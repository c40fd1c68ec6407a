import { imperfection, type SizeKind } from "../imperfections";
import { type Mm, roundTo } from "../math";
import type { Report } from "../report";
import type { Dimension, Face } from "../weld";
import type { WritingEvent } from "./edit-report";
import type { TrayKind } from "./gauge-tray";

/** Somewhere in the report that a reading may be written: the open row, or a dimension. */
export type Goal =
  | { readonly kind: "row"; readonly id: string; readonly number: number; readonly size: SizeKind }
  | { readonly kind: "dimension"; readonly dimension: Dimension };

/** What each gauge measures, as sizes of rows and as dimensions of a face. */
const MEASURES: Readonly<
  Record<
    TrayKind,
    { readonly sizes: readonly SizeKind[]; readonly dimensions: Readonly<Record<Face, readonly Dimension[]>> }
  >
> = {
  "steel-rule": { sizes: ["diameter"], dimensions: { cap: ["weld-width"], root: [] } },
  "height-gauge": { sizes: ["height", "depth"], dimensions: { cap: ["cap-height"], root: ["root-height"] } },
  "depth-gauge": { sizes: ["depth"], dimensions: { cap: [], root: [] } },
  "hook-gauge": {
    sizes: ["height"],
    dimensions: { cap: ["linear-misalignment"], root: ["linear-misalignment"] },
  },
  "fillet-gauge": { sizes: ["height"], dimensions: { cap: [], root: [] } },
  "profile-comb": { sizes: [], dimensions: { cap: [], root: [] } },
};

/** Where a reading of this gauge on this face may go: the open row where its size is of that sort, then dimensions. */
export function goalsOf(gauge: TrayKind, face: Face, report: Report, openId: string | null): readonly Goal[] {
  const { sizes, dimensions } = MEASURES[gauge];
  const index = report.calls.findIndex(({ id }) => id === openId);
  const call = report.calls[index];
  const size = call?.type ? imperfection(call.type).size : null;
  const row: readonly Goal[] =
    call && size && sizes.includes(size) ? [{ kind: "row", id: call.id, number: index + 1, size }] : [];
  return [...row, ...dimensions[face].map((dimension): Goal => ({ kind: "dimension", dimension }))];
}

/** What is written when a reading goes there. A size counts without its sign; a dimension also keeps where, mm. */
export function takenOver(goal: Goal, reading: Mm, x: Mm): readonly WritingEvent[] {
  const value = Math.abs(reading);
  if (goal.kind === "row") {
    return [{ kind: "change", id: goal.id, field: "size", value }, { kind: "leave-field" }];
  }
  const { dimension } = goal;
  return [
    { kind: "measure", dimension, station: null, field: "value", value },
    { kind: "measure", dimension, station: null, field: "at", value: roundTo(x, 0.1) },
    { kind: "leave-field" },
  ];
}
