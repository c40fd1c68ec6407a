import { mix } from "../../math";
import type { RandomStream } from "../../random";
import { columnX, type Grid, gradient1 } from "../../surface";
import { type ButtJoint, type Face, grooveHalfWidth } from "../../weld";
import type { FacePlan, RunPlan } from "../plan";
import type { Look } from "../work";
import { draftRun, type RunDraft } from "./draft-run";
import { nearTack, tacksOf } from "./tacks";
import { type RunStops, tellStory } from "./welding-story";

/** What the recipe says about the runs of one face. */
export interface FaceLayout {
  readonly direction: 1 | -1;
  /** How far the outer toes lie outside the joint's edges, mm; the mean of both sides. */
  readonly overlap: number;
  /** Ordinary stops of every run, from plate B's side: one entry per run. */
  readonly runs: readonly RunStops[];
}

/** Distance of neighbouring runs as a share of their half width: two lie further apart than three. */
const SPACING = { two: 1.14, three: 0.95 };

/** Half widths of `count` equal runs that together cover `half` mm to both sides of the joint's centre. */
export function runHalfWidth(half: number, count: number): number {
  if (count === 1) return half;
  const spacing = count === 2 ? SPACING.two : SPACING.three;
  return half / (1 + ((count - 1) * spacing) / 2);
}

/** Plans the runs of a face as a sound weld, ordinary stops included. */
export function planFace(
  face: Face,
  joint: ButtJoint,
  layout: FaceLayout,
  look: Look,
  grid: Grid,
  random: RandomStream,
): FacePlan {
  const plan =
    face === "cap"
      ? planCap(joint, layout, look, grid, random.child("plan"))
      : planRoot(joint, layout, look, grid, random.child("plan"), random.child("plate/tacks"));
  plan.runs.forEach((run, n) => {
    tellStory(run, layout.runs[n], grid, joint.length, random.child(`story/${n}`));
  });
  return plan;
}

function planCap(joint: ButtJoint, layout: FaceLayout, look: Look, grid: Grid, random: RandomStream): FacePlan {
  const groove = grooveHalfWidth(joint);
  const seed = random.seed();
  const half = groove + layout.overlap;
  const count = layout.runs.length;
  const drafts = count === 1 ? [weave(half, layout, look, random)] : stringers(half, count, layout, look, random);
  return {
    groove,
    wallSlope: 1 / Math.tan((joint.grooveAngle * Math.PI) / 360),
    fill: levelBelow(grid, joint.length, seed),
    runs: drafts.map((draft, n) => draftRun(draft, grid, joint.length, random.child(`run/${n}`))),
  };
}

/** Level of the layer below the cap: about 0.9 mm down, flush at the ends, where it runs out to the plate's edge. */
function levelBelow(grid: Grid, length: number, seed: number): Float32Array {
  return Float32Array.from({ length: grid.columns }, (_, i) => {
    const x = columnX(grid, i);
    const inside = Math.min(x, length - x);
    const level = -0.9 + 0.2 * gradient1(x / 14, seed) + 0.1 * gradient1(x / 4, seed + 1);
    return mix(0.05, level, Math.min(1, inside / 9));
  });
}

function weave(half: number, layout: FaceLayout, look: Look, random: RandomStream): RunDraft {
  return {
    direction: layout.direction,
    y: random.normal(0, 0.2),
    halfWidth: half,
    height: random.uniform(1.9, 2.4),
    exponent: random.uniform(2.2, 2.7),
    tail: random.uniform(0.26, 0.36),
    tailPower: random.uniform(2, 2.6),
    pitch: look.ripplePitch * 1.45,
    ripple: look.rippleHeight * 1.6,
    coarse: 0.4,
    smooth: 0.13,
    weave: true,
  };
}

function stringers(half: number, count: number, layout: FaceLayout, look: Look, random: RandomStream): RunDraft[] {
  const halfWidth = runHalfWidth(half, count);
  const outermost = half - halfWidth;
  return Array.from({ length: count }, (_, n) => ({
    direction: layout.direction,
    y: mix(-outermost, outermost, n / (count - 1)) + random.normal(0, 0.12),
    halfWidth: halfWidth * random.uniform(0.96, 1.05),
    height: n === 0 ? random.uniform(1.7, 2.1) : random.uniform(0.95, 1.25) + (count === 2 ? 0.3 : 0),
    exponent: random.uniform(1.85, 2.25),
    tail: random.uniform(0.62, 0.95),
    tailPower: random.uniform(1.7, 2.3),
    pitch: look.ripplePitch,
    ripple: look.rippleHeight,
    coarse: 0.35,
    smooth: 0.13,
    weave: false,
  }));
}

/** Worn edges make the gap look wider than it was set, mm a side. */
const WORN = { from: 0.1, to: 0.25 };
/** Where nothing came through, the gap is this deep. */
const GAP_DEPTH = 1.9;
/** Nearly upright root faces. */
const ROOT_WALL = 14;

function planRoot(
  joint: ButtJoint,
  layout: FaceLayout,
  look: Look,
  grid: Grid,
  random: RandomStream,
  tacking: RandomStream,
): FacePlan {
  const groove = joint.rootGap / 2 + random.uniform(WORN.from, WORN.to);
  const seed = random.seed();
  const draft: RunDraft = {
    direction: layout.direction,
    y: random.normal(0, 0.12),
    halfWidth: Math.max(2.2, groove + layout.overlap),
    height: random.uniform(0.8, 1.2),
    exponent: random.uniform(2.3, 2.9),
    tail: random.uniform(0.85, 1.15),
    tailPower: random.uniform(1.08, 1.3),
    pitch: look.ripplePitch * 1.35,
    ripple: look.rippleHeight,
    coarse: 0.6,
    smooth: 0.1,
    weave: false,
  };
  const run = draftRun(draft, grid, joint.length, random.child("run/0"));
  followGap(run, grid, random.seed());
  layOverTacks(run, grid, tacksOf(joint, tacking));
  const fill = Float32Array.from(
    { length: grid.columns },
    (_, i) => -GAP_DEPTH + 0.25 * gradient1(columnX(grid, i) / 8, seed),
  );
  return { groove, wallSlope: ROOT_WALL, fill, runs: [run] };
}

const LEAST_ROOT_HEIGHT = 0.5;

/** The root bead goes where the gap goes: wider and flatter where it opens, to one side where an edge stands out. */
function followGap(run: RunPlan, grid: Grid, seed: number): void {
  for (let i = 0; i < grid.columns; i++) {
    const x = columnX(grid, i);
    const gap = gradient1(x / 29, seed) + 0.5 * gradient1(x / 11, seed + 1);
    run.centre[i] += 0.3 * gradient1(x / 37, seed + 2) + 0.16 * gradient1(x / 8, seed + 3);
    run.halfWidth[i] *= 1 + 0.075 * gap;
    run.height[i] = Math.max(LEAST_ROOT_HEIGHT, run.height[i] * (1 - 0.1 * gap));
  }
}

/** Over a tack the root was wider already and takes less metal. */
function layOverTacks(run: RunPlan, grid: Grid, tacks: readonly number[]): void {
  for (let i = 0; i < grid.columns; i++) {
    const share = nearTack(tacks, columnX(grid, i));
    run.halfWidth[i] += 0.3 * share;
    run.height[i] *= 1 - 0.22 * share;
    run.ripple[i] *= 1 - 0.35 * share;
  }
}
