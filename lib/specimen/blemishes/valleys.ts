import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { fractal1, gradient1, nearestRow, rowY } from "../../surface";
import { mixMaterial } from "../field";
import { runBorder } from "../imperfections/run-border";
import { drawEnds, type Envelope, unevenEnvelope } from "../imperfections/uneven-ends";
import type { Range } from "../runs";
import { forColumns } from "../runs/edit";
import type { FaceWork } from "../work";
import type { BlemishHabit } from "./blemish-habits";
import { BLEMISH_TONES as TONES } from "./tones";

/** Length over which a valley keeps its kind, mm. */
const STRETCH = { usual: 15, sigma: 0.65, least: 4, most: 55 };
/** How much a dark stretch is deepened and an open one is filled, mm. */
const DEEPENED: Range = [0.012, 0.045];
const FILLED: Range = [0.015, 0.05];

interface Stretch {
  readonly isDark: boolean;
  readonly from: number;
  readonly to: number;
  readonly strength: number;
  readonly depth: number;
  readonly envelope: Envelope;
  readonly seed: number;
}

/** The valley between two runs: dark and narrow where soot and oxide were caught, elsewhere open and brushed bright. */
export function shadeValleys(work: FaceWork, habit: BlemishHabit, random: RandomStream): void {
  for (let run = 1; run < work.plan.runs.length; run++) {
    const border = runBorder(work, run);
    for (const stretch of drawStretches(work.joint.length, habit, random.child(`run ${run}`)))
      shade(work, border, stretch);
  }
}

function drawStretches(length: number, habit: BlemishHabit, random: RandomStream): Stretch[] {
  const stretches: Stretch[] = [];
  for (let x = -random.uniform(0, 20); x < length; ) {
    const long = clamp(random.logNormal(STRETCH.usual, STRETCH.sigma), STRETCH.least, STRETCH.most);
    const luck = random.uniform(0, 1);
    const ends = drawEnds(random, long, [1, 3], [2, 8]);
    const isDark = luck < habit.darkValley;
    if (isDark || luck > 1 - habit.openValley)
      stretches.push({
        isDark,
        from: x,
        to: x + long,
        strength: random.uniform(0.45, 1),
        depth: random.uniform(...(isDark ? DEEPENED : FILLED)),
        envelope: unevenEnvelope(x, x + long, ends, 0.8, random.seed()),
        seed: random.seed(),
      });
    x += long;
  }
  return stretches;
}

function shade(work: FaceWork, border: Float32Array, stretch: Stretch): void {
  const { strip } = work;
  const { grid, z, clean, bead } = strip;
  const { isDark, strength, depth, seed } = stretch;
  const reach = isDark ? 0.7 : 1.3;
  const bottom = bottomAlong(work, border, stretch);
  forColumns(grid, stretch.from, stretch.to, (i, x) => {
    if (Number.isNaN(bottom[i])) return;
    const weight =
      stretch.envelope(x) *
      clamp(0.72 + 0.8 * fractal1(x / 4.7, seed, 3, 0.6) + 0.25 * gradient1(x / 0.8, seed + 1), 0, 1.1);
    if (weight < 0.03) return;
    const at = bottom[i] + 0.04 * gradient1(x / 1.1, seed + 2);
    const half = isDark ? 0.12 + 0.1 * weight * (0.8 + 0.5 * gradient1(x / 2.1, seed + 3)) : 0.5 + 0.25 * weight;
    const last = nearestRow(grid, at + reach);
    for (let j = nearestRow(grid, at - reach); j <= last; j++) {
      const k = j * grid.columns + i;
      if (clean[k] > 0.05 || bead[k] < 0.5) continue;
      const off = Math.abs(rowY(grid, j) - at) / half;
      if (isDark) {
        const line = ease(1.6, 0.3, off) * Math.min(1, 1.2 * weight);
        z[k] -= depth * line;
        mixMaterial(strip, k, TONES.soot, 0.62, 0.1, 0.85 * strength * line);
        mixMaterial(strip, k, TONES.stain, 0.6, 0.25, 0.3 * strength * weight * ease(4, 0.8, off));
      } else {
        const flank = ease(1.7, 0.2, off) * weight;
        z[k] += depth * flank;
        mixMaterial(strip, k, TONES.bareSteel, 0.42, 0.85, 0.5 * strength * flank);
      }
    }
  });
}

/** The bottom is looked for within this distance of the border, and evened out over this half length along the weld; mm. */
const SEARCHED = 0.45;
const EVENED = 0.6;
/** Where single columns lie further off than this, there is no valley to follow (a restart, a step), mm. */
const TORN = 0.3;

/** Bottom of the valley, y mm per column of a stretch: there the soot lies. NaN where none can be followed. */
function bottomAlong(work: FaceWork, border: Float32Array, { from, to }: Stretch): Float32Array {
  const { grid } = work.strip;
  const lowest = new Float32Array(grid.columns).fill(Number.NaN);
  const bottom = new Float32Array(grid.columns).fill(Number.NaN);
  forColumns(grid, from - EVENED, to + EVENED, (i) => {
    lowest[i] = Number.isNaN(border[i]) ? Number.NaN : lowestNear(work, i, border[i]);
  });
  const reach = Math.round(EVENED * grid.perMm);
  forColumns(grid, from, to, (i) => {
    let sum = 0;
    let torn = 0;
    for (let n = -reach; n <= reach; n++) sum += lowest[i + n] / (2 * reach + 1);
    for (let n = -reach; n <= reach; n++) torn += Math.abs(lowest[i + n] - sum) / (2 * reach + 1);
    if (torn < TORN) bottom[i] = sum;
  });
  return bottom;
}

function lowestNear({ strip }: FaceWork, i: number, y: number): number {
  const { grid, z } = strip;
  const last = nearestRow(grid, y + SEARCHED);
  const beside = Math.round(0.5 * grid.perMm) * grid.columns;
  let best = nearestRow(grid, y);
  let deepest = Number.NEGATIVE_INFINITY;
  for (let j = nearestRow(grid, y - SEARCHED); j <= last; j++) {
    const k = j * grid.columns + i;
    const below = z[k - beside] + z[k + beside] - 2 * z[k];
    if (below <= deepest) continue;
    deepest = below;
    best = j;
  }
  return rowY(grid, best);
}
