import { imperfection, type SizeKind } from "../imperfections";
import { type Mm, roundTo } from "../math";
import type { Report } from "../report";
import { type AskedDimension, type Aspect, faceOf, type JointFacts, type SurfaceFace } from "../weld";
import type { WritingEvent } from "./edit-report";
import { cornerUseOf, type TrayKind, type TrayPlacement } from "./gauge-tray";

/** Somewhere in the report that a reading may be written: the open row, or a dimension. */
export type Goal =
  | { readonly kind: "row"; readonly id: string; readonly number: number; readonly size: SizeKind }
  | ({ readonly kind: "dimension" } & AskedDimension);

/** What each gauge measures, as sizes of rows and as dimensions of a butt plate's faces. */
const MEASURES: Readonly<Record<TrayKind, Measures>> = {
  "steel-rule": { sizes: ["diameter"], dimensions: { cap: ["weld-width"] } },
  caliper: { sizes: [], dimensions: { cap: ["plate-thickness"], root: ["plate-thickness"] } },
  "height-gauge": { sizes: ["height", "depth"], dimensions: { cap: ["cap-height"], root: ["root-height"] } },
  "depth-gauge": { sizes: ["depth"], dimensions: {} },
  "hook-gauge": {
    sizes: ["height"],
    dimensions: { cap: ["linear-misalignment"], root: ["linear-misalignment"] },
  },
  "fillet-gauge": { sizes: ["height"], dimensions: {} },
  "fillet-blades": { sizes: [], dimensions: {} },
  "profile-comb": { sizes: [], dimensions: {} },
};
interface Measures {
  readonly sizes: readonly SizeKind[];
  readonly dimensions: Readonly<Partial<Record<SurfaceFace, readonly AskedDimension["dimension"][]>>>;
}

/** A gauge set down within so many mm of a scribed station stands on it. */
const AT_STATION: Mm = 3;

/** Where a reading of this gauge may go: the open row where its size is of that sort, then dimensions. */
export function goalsOf(
  placement: TrayPlacement,
  aspect: Aspect,
  joint: JointFacts,
  report: Report,
  openId: string | null,
): readonly Goal[] {
  const { sizes, dimensions } = MEASURES[placement.kind];
  const index = report.calls.findIndex(({ id }) => id === openId);
  const call = report.calls[index];
  const size = call?.type ? imperfection(call.type).size : null;
  const row: readonly Goal[] =
    call && size && sizes.includes(size) ? [{ kind: "row", id: call.id, number: index + 1, size }] : [];
  const onFace = (dimensions[faceOf(aspect)] ?? []).map((dimension) => ({ dimension, station: null }));
  const asked = joint.kind === "fillet" ? inCorner(placement, joint.stations) : onFace;
  return [...row, ...asked.map((one): Goal => ({ kind: "dimension", ...one }))];
}

/** On a station what is asked for there, and always the smallest of the whole weld. */
function inCorner(placement: TrayPlacement, stations: readonly Mm[]): readonly AskedDimension[] {
  const use = cornerUseOf(placement);
  if (use === null) return [];
  const station = stations.findIndex((x) => Math.abs(x - placement.x) <= AT_STATION) + 1;
  const smallest = { dimension: use === "throat" ? "smallest-throat" : "smallest-leg", station: null } as const;
  return station > 0 ? [{ dimension: use, station }, smallest] : [smallest];
}

/** What is written when a reading goes there. A size counts without its sign; a dimension also keeps where, mm. */
export function takenOver(goal: Goal, reading: Mm, x: Mm): readonly WritingEvent[] {
  const value = Math.abs(reading);
  if (goal.kind === "row") {
    return [{ kind: "change", id: goal.id, field: "size", value }, { kind: "leave-field" }];
  }
  const { dimension, station } = goal;
  const at: WritingEvent = { kind: "measure", dimension, station, field: "at", value: roundTo(x, 0.1) };
  return [
    { kind: "measure", dimension, station, field: "value", value },
    ...(station === null ? [at] : []),
    { kind: "leave-field" },
  ];
}
