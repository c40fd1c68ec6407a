import { clamp, tabulate } from "../../math";
import type { RandomStream } from "../../random";
import { boxBlur, columnX, type Grid } from "../../surface";
import type { RunPlan, Segment } from "../plan";
import type { Hand } from "./draft-run";
import type { StopHabit } from "./process-style";

/** Where the electrodes of one run ended, mm from the datum, in order of place. */
export interface RunStops {
  /** First and last place of the run's weld metal, before the rounding of its ends. */
  readonly from: number;
  readonly to: number;
  readonly stops: readonly number[];
}

/**
 * Sets the electrode lengths of a run and what they do to it: an ordinary restart at every stop, a start and a finish,
 * wider and flatter metal as an electrode burns down, a drift over the length, one or two changes of arc length.
 * Everything stays acceptable.
 */
export function tellStory(run: RunPlan, stops: RunStops, telling: Telling, random: RandomStream): void {
  run.segments = electrodeLengths(run, stops, telling, random.child("lengths"));
  burnDown(run, stops, telling, random.child("burn"));
}

/** Who welds what how: the joint's length in mm, the process's habits, the hand. */
export interface Telling {
  readonly grid: Grid;
  readonly length: number;
  readonly habit: StopHabit;
  readonly hand: Hand;
}

function electrodeLengths(run: RunPlan, stops: RunStops, { grid, habit }: Telling, random: RandomStream): Segment[] {
  const marks = [stops.from, ...stops.stops, stops.to];
  const halfWidth = run.halfWidth[grid.columns >> 1];
  const segments: Segment[] = [];
  for (let n = 0; n + 1 < marks.length; n++) {
    const isFirst = run.direction > 0 ? n === 0 : n + 2 === marks.length;
    const between = { a: marks[n], b: marks[n + 1] };
    segments.push(
      isFirst ? firstStart(between, habit, halfWidth, random) : ordinaryRestart(run, between, habit, halfWidth, random),
    );
  }
  return run.direction > 0 ? segments : segments.reverse();
}

interface Between {
  readonly a: number;
  readonly b: number;
}

function firstStart(between: Between, habit: StopHabit, halfWidth: number, random: RandomStream): Segment {
  return {
    ...between,
    hump: 0.65 * random.uniform(...habit.hump),
    humpLength: random.uniform(4, 7),
    crater: random.uniform(...habit.crater),
    shift: 0,
    widen: -0.08 * halfWidth * random.uniform(0.25, 1),
    wetting: 0,
    pitchFactor: random.uniform(0.84, 1.18),
    rippleFactor: random.uniform(0.85, 1.2),
  };
}

/** A narrow root bead takes smaller humps. */
const humpScale = (halfWidth: number): number => clamp(halfWidth / 4.5, 0.6, 1.1);

/**
 * An ordinary restart against what the process's habit says of craters and wetting lengths: it must be judged before it is
 * passed. Its hump stays as low as the habit has it: from 0.8 mm on a restart is recorded.
 */
const MORE_CRATER = 1.2;
const TIGHTER = 0.78;

function ordinaryRestart(
  run: RunPlan,
  between: Between,
  habit: StopHabit,
  halfWidth: number,
  random: RandomStream,
): Segment {
  // begun ahead and drawn back, so that the old crater is filled
  const overlap = halfWidth * random.uniform(0.45, 0.95) + random.uniform(0, 1.5);
  const scale = humpScale(halfWidth);
  // arc and hand rarely begin as they left off: finer and coarser ripples are commoner than the same again
  const isCoarser = random.chance(0.5);
  return {
    a: between.a - (run.direction > 0 ? overlap : 0),
    b: between.b + (run.direction > 0 ? 0 : overlap),
    hump: random.uniform(...habit.hump) * scale,
    humpLength: random.uniform(3.8, 6.5),
    crater: MORE_CRATER * random.uniform(...habit.crater) * scale,
    shift: random.normal(0, 0.27) * scale,
    widen: random.uniform(-0.05, 0.45) * scale,
    wetting: TIGHTER * random.uniform(...habit.wetting),
    rearRadius: Math.min(4.2, halfWidth * random.uniform(0.55, 0.85)),
    lapSeed: random.seed(),
    pitchFactor: isCoarser ? random.uniform(1.02, 1.3) : random.uniform(0.74, 0.96),
    rippleFactor: isCoarser ? random.uniform(1, 1.5) : random.uniform(0.75, 1.05),
  };
}

/** A change of arc length: longer (k > 0) makes the run wider, flatter and coarser. */
interface ArcChange {
  readonly x: number;
  readonly reach: number;
  readonly strength: number;
}

function burnDown(run: RunPlan, stops: RunStops, telling: Telling, random: RandomStream): void {
  const { grid, length, habit, hand } = telling;
  const widthDrift = random.normal(0, 0.03) * hand.tremble;
  const heightDrift = random.normal(0, 0.04) * hand.tremble;
  const widening = random.uniform(...habit.burning);
  const count = Math.round(hand.tremble * random.uniform(0.7, 2));
  const changes: ArcChange[] = Array.from({ length: count }, () => ({
    x: random.uniform(0.1, 0.9) * length,
    reach: random.uniform(7, 14),
    strength: random.chance(0.6) ? 1 : -0.7,
  }));
  const burnt = burntShare(run, stops, grid);
  for (let i = 0; i < grid.columns; i++) {
    const x = columnX(grid, i);
    const drift = (2 * x) / length - 1;
    const arc = changes.reduce((sum, c) => sum + c.strength * Math.exp(-(((x - c.x) / c.reach) ** 2)), 0);
    run.halfWidth[i] *= 1 + widening * (burnt[i] - 0.45) + widthDrift * drift + 0.06 * arc;
    run.height[i] *= 1 + heightDrift * drift - 1.6 * widening * (burnt[i] - 0.45) - 0.1 * arc;
    run.ripple[i] *= 1 + 0.3 * arc;
    run.tail[i] *= 1 + 3 * widening * (burnt[i] - 0.4);
  }
}

/** Half length over which the change at a stop is eased, mm: a sudden one would cut a line across the run. */
const EASED = 2.2;

/** How far the electrode had burnt down in every column, 0..1. */
function burntShare(run: RunPlan, stops: RunStops, grid: Grid): Float32Array {
  const burnt = tabulate(grid.columns, (i) => {
    const x = clamp(columnX(grid, i), stops.from, stops.to);
    const segment = run.segments.findLast((s) => x >= s.a && x <= s.b) ?? run.segments[0];
    const share = (x - segment.a) / (segment.b - segment.a);
    return run.direction > 0 ? share : 1 - share;
  });
  return boxBlur(burnt, grid.columns, 1, EASED * grid.perMm, 0, 3);
}
