import { clamp, mix, tabulate } from "../../math";
import type { RandomStream } from "../../random";
import { columnX, type Grid, gradient1 } from "../../surface";
import { type Face, grooveHalfWidth } from "../../weld";
import type { FacePlan, RunPlan } from "../plan";
import type { Look, WorkedJoint } from "../work";
import { draftRun, type Hand, ROUND, type RunDraft, type Waves, wave } from "./draft-run";
import { keepInSight } from "./keep-in-sight";
import { POSITION_STYLES, type PositionStyle } from "./position-style";
import type { ProcessStyle } from "./process-style";
import { PROCESS_STYLES } from "./process-styles";
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

/** Distance of neighbouring runs as a share of their half width: two lie further apart than more. */
const SPACING = { two: 1.14, more: 1.04 };
/** The run laid last lies open from toe to toe: it is kept narrower than its neighbours, or it would look twice as wide. */
const LAST_RUN = 0.86;

/** Half widths of `count` equal runs that together cover `half` mm to both sides of the joint's centre. */
export function runHalfWidth(half: number, count: number): number {
  if (count === 1) return half;
  const spacing = count === 2 ? SPACING.two : SPACING.more;
  return half / (1 + ((count - 1) * spacing) / 2);
}

/** How nervous hands get, from the steadiest in flat position to the least steady. */
const TREMBLE = { most: 1.75, least: 0.6 };
/** How much more even a steady hand's ripples are than a nervous one's. */
const EVENER = 0.3;

/** What planning one face goes by. */
interface Planning {
  readonly joint: WorkedJoint;
  readonly layout: FaceLayout;
  readonly look: Look;
  readonly grid: Grid;
  readonly style: ProcessStyle;
  readonly place: PositionStyle;
  readonly hand: Hand;
}

/** Plans the runs of a face as a sound weld, ordinary stops included. */
export function planFace(
  face: Face,
  joint: WorkedJoint,
  layout: FaceLayout,
  look: Look,
  grid: Grid,
  random: RandomStream,
): FacePlan {
  const style = PROCESS_STYLES[joint.process];
  const place = POSITION_STYLES[joint.position];
  const hand = { tremble: place.tremble * mix(TREMBLE.most, TREMBLE.least, look.steadiness), tempo: look.tempo };
  const planning = { joint, layout, look, grid, style, place, hand };
  const plan =
    face === "cap"
      ? planCap(planning, random.child("plan"))
      : planRoot(planning, random.child("plan"), random.child("plate/tacks"));
  plan.runs.forEach((run, n) => {
    tellStory(
      run,
      layout.runs[n],
      { grid, length: joint.length, habit: style.stops, hand },
      random.child(`story/${n}`),
    );
  });
  keepInSight(face, plan);
  return plan;
}

function planCap(planning: Planning, random: RandomStream): FacePlan {
  const { joint, layout, grid, hand } = planning;
  const groove = grooveHalfWidth(joint);
  const seed = random.seed();
  const half = groove + layout.overlap;
  const count = layout.runs.length;
  const drafts = count === 1 ? [weave(planning, half, random)] : stringers(planning, half, count, random);
  return {
    groove,
    wallSlope: 1 / Math.tan((joint.grooveAngle * Math.PI) / 360),
    fill: levelBelow(grid, joint.length, seed),
    runs: drafts.map((draft, n) => {
      const run = draftRun(draft, hand, grid, joint.length, random.child(`run/${n}`));
      if (n > 0) overlapUnevenly(run, hand, grid, random.child(`overlap/${n}`).seed());
      return run;
    }),
  };
}

/** It reaches further over in the mean, share of its half width, and never draws back: that would leave a notch that is to be reported. */
const OVER = 0.06;
/** How much flatter the edge of a run gets where it runs out on the one before it: shares of its exponent, wavelength in mm. */
const RUN_OUT = { most: 0.15, wavelength: 23 };
/** How far the edge of a run wanders on the run before it, as a share of its half width: wavelength in mm, and strength. */
const OVERLAPPING: Waves = [
  [41, 0.2],
  [17, 0.13],
  [6.5, 0.05],
];

/** A run takes now more, now less of the one before it: the valley between them wanders, deep here and shallow there. Its other toe stays. */
function overlapUnevenly(run: RunPlan, hand: Hand, grid: Grid, seed: number): void {
  for (let i = 0; i < grid.columns; i++) {
    const x = columnX(grid, i) / hand.tempo;
    const over =
      (OVER + Math.max(0, wave(OVERLAPPING, x, seed))) * mix(0.55, 1, Math.min(1, hand.tremble)) * run.halfWidth[i];
    run.centre[i] -= over / 2;
    run.halfWidth[i] += over / 2;
    const flat = RUN_OUT.most * clamp(0.4 + 1.1 * gradient1(x / RUN_OUT.wavelength, seed + 7), 0, 1);
    run.exponentMinus[i] = Math.max(ROUND, run.exponentMinus[i] * (1 - flat));
  }
}

/** Level of the layer below the cap: about 0.9 mm down, flush at the ends, where it runs out to the plate's edge. */
function levelBelow(grid: Grid, length: number, seed: number): Float32Array {
  return tabulate(grid.columns, (i) => {
    const x = columnX(grid, i);
    const inside = Math.min(x, length - x);
    const level = -0.9 + 0.2 * gradient1(x / 14, seed) + 0.1 * gradient1(x / 4, seed + 1);
    return mix(0.05, level, Math.min(1, inside / 9));
  });
}

/** What weaves, stringers and root beads have in common. */
function ripples({ look, style }: Planning) {
  return {
    pitch: look.ripplePitch,
    ripple: look.rippleHeight,
    coarse: style.ripple.coarse,
    smooth: 0.13,
    evenness: clamp(style.ripple.evenness + EVENER * (look.steadiness - 0.5), 0, 1),
    fine: style.ripple.fine,
    bend: style.ripple.bend,
    ragged: style.bead.ragged,
  };
}

/** A single run narrower than this is no weave, mm of half width. */
const LEAST_WEAVE = 5.4;
/** Ripples of a weave against a stringer's. */
const WEAVE_RIPPLE = { height: 1.6, fine: 0.2, evener: 0.25 };

function weave(planning: Planning, half: number, random: RandomStream): RunDraft {
  const { layout, style, place } = planning;
  const { bead } = style;
  const common = ripples(planning);
  const isWeave = half > LEAST_WEAVE;
  const exponent = isWeave
    ? random.uniform(...bead.weaveExponent) + place.exponent.weave
    : random.uniform(...bead.exponent) + place.exponent.stringer;
  const wide = clamp((half - 4) / 4.5, 0, 1);
  return {
    ...common,
    direction: layout.direction,
    y: random.normal(0, 0.2),
    halfWidth: half,
    height: random.uniform(...bead.weave) * place.height.weave,
    exponent,
    exponentMinus: place.exponent.low,
    exponentPlus: place.exponent.high,
    tail: random.uniform(...style.ripple.tail) * mix(place.tail.stringer, place.tail.weave, wide),
    tailPower: random.uniform(...style.ripple.tailPower) + 0.3 * wide,
    pitch: common.pitch * place.pitch * mix(1, style.ripple.weavePitch, wide),
    ripple: common.ripple * place.ripple * mix(1, WEAVE_RIPPLE.height, wide),
    fine: common.fine * mix(1, WEAVE_RIPPLE.fine, wide),
    evenness: Math.min(1, common.evenness + WEAVE_RIPPLE.evener * wide),
    dwell: mix(place.dwell.stringer, place.dwell.weave, wide),
    lean: place.lean,
    lag: place.lag,
    weave: isWeave,
  };
}

function stringers(planning: Planning, half: number, count: number, random: RandomStream): RunDraft[] {
  const { layout, style, place, hand } = planning;
  const { bead } = style;
  const halfWidth = runHalfWidth(half, count);
  const outermost = half - halfWidth;
  const common = ripples(planning);
  const isLast = (n: number) => count > 2 && n === count - 1;
  return Array.from({ length: count }, (_, n) => ({
    ...common,
    direction: layout.direction,
    y:
      mix(-outermost, outermost, n / (count - 1)) +
      (isLast(n) ? (1 - LAST_RUN) * halfWidth : 0) +
      random.normal(0, 0.12 * hand.tremble),
    halfWidth: halfWidth * random.uniform(0.95, 1.06) * (isLast(n) ? LAST_RUN : 1),
    height:
      place.height.stringer *
      (n === 0 ? random.uniform(...bead.first) : random.uniform(...bead.next) + (count === 2 ? 0.3 : 0)),
    exponent: random.uniform(...bead.exponent) + place.exponent.stringer,
    exponentMinus: place.exponent.low,
    exponentPlus: place.exponent.high,
    tail: random.uniform(...style.ripple.tail) * place.tail.stringer,
    tailPower: random.uniform(...style.ripple.tailPower),
    pitch: common.pitch * place.pitch * random.uniform(0.86, 1.16),
    ripple: common.ripple * place.ripple * random.uniform(0.78, 1.18),
    dwell: place.dwell.stringer,
    lean: place.lean,
    lag: place.lag,
    weave: false,
  }));
}

/** Worn edges make the gap look wider than it was set, mm a side. */
const WORN = { from: 0.1, to: 0.25 };
/** Where nothing came through, the gap is this deep. */
const GAP_DEPTH = 1.9;
/** Nearly upright root faces. */
const ROOT_WALL = 14;
/** Sharper creases than on a cap, share of the pitch; swelling of the toes, mm. */
const ROOT_SMOOTH = 0.08;
const ROOT_DWELL = 0.085;

function planRoot(planning: Planning, random: RandomStream, tacking: RandomStream): FacePlan {
  const { joint, layout, grid, style, place, hand } = planning;
  const { root } = style;
  const groove = joint.rootGap / 2 + random.uniform(WORN.from, WORN.to);
  const seed = random.seed();
  const common = ripples(planning);
  const draft: RunDraft = {
    ...common,
    direction: layout.direction,
    y: random.normal(0, 0.12),
    halfWidth: Math.max(root.narrowest, groove + layout.overlap),
    height: random.uniform(...root.height) * place.root.height,
    exponent: random.uniform(...root.exponent) + place.root.exponent,
    exponentMinus: 0,
    exponentPlus: 0,
    tail: random.uniform(...root.tail),
    tailPower: random.uniform(...root.tailPower),
    pitch: common.pitch * root.pitch,
    ripple: common.ripple * root.ripple,
    coarse: root.coarse,
    smooth: ROOT_SMOOTH,
    dwell: ROOT_DWELL,
    lean: 0,
    lag: 0,
    weave: false,
  };
  const run = draftRun(draft, hand, grid, joint.length, random.child("run/0"));
  followGap(run, root.followsGap, place.root.least, grid, random.seed());
  layOverTacks(run, grid, tacksOf(joint, tacking));
  const fill = tabulate(grid.columns, (i) => -GAP_DEPTH + 0.25 * gradient1(columnX(grid, i) / 8, seed));
  return { groove, wallSlope: ROOT_WALL, fill, runs: [run] };
}

/** The root bead goes where the gap goes: wider and flatter where it opens, to one side where an edge stands out. */
function followGap(run: RunPlan, share: number, least: number, grid: Grid, seed: number): void {
  for (let i = 0; i < grid.columns; i++) {
    const x = columnX(grid, i);
    const gap = share * (gradient1(x / 29, seed) + 0.5 * gradient1(x / 11, seed + 1));
    run.centre[i] += share * (0.3 * gradient1(x / 37, seed + 2) + 0.16 * gradient1(x / 8, seed + 3));
    run.halfWidth[i] *= 1 + 0.075 * gap;
    run.height[i] = Math.max(least, run.height[i] * (1 - 0.1 * gap));
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
