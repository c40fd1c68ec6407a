import { clamp } from "../../math";
import type { RandomStream } from "../../random";
import { columnX, gradient1, nearestColumn, nearestRow, rowY } from "../../surface";
import { runEdgeAt, toeAt } from "../runs/edit";
import type { FaceWork } from "../work";
import { type BlemishHabit, SPECK_KINDS, type SpeckKind } from "./blemish-habits";
import { drawSpeck, laySpeck } from "./speck-shape";

/** Specks keep away from the ends of the plate, mm. */
const FROM_ENDS = 4;
/** Shares of specks that lie in creases of ripples, beside toes, in valleys between runs; the rest lies anywhere. */
const PLACES = { crease: 0.46, toe: 0.24, valley: 0.12 };
/** A group: how many, and how far they lie from its middle, mm. */
const GROUP = { least: 3, more: 3, spread: [0.55, 1.3] } as const;

interface Place {
  readonly x: number;
  readonly y: number;
  /** Direction of the crease it lies in, radians; null where there is none. */
  readonly along: number | null;
}

/** Small harmless marks all over the weld: single ones, most where pores lie too, and loose groups. */
export function sprinkleSpecks(work: FaceWork, habit: BlemishHabit, random: RandomStream): void {
  const count = Math.round(random.uniform(...habit.specks) * (work.face === "root" ? 0.75 : 1));
  const kinds = leaning(habit, random.child("kinds"));
  const single = random.child("single");
  const rich = random.child("rich").seed();
  for (let n = 0; n < count; n++) {
    const place = drawPlace(work, single, richAt(work, single, rich));
    leave(work, single, pickKind(kinds, single), place);
  }
  const groups = random.child("groups");
  for (let n = Math.round(groups.uniform(...habit.groups)); n > 0; n--) leaveGroup(work, kinds, groups);
  const spots = random.child("spots");
  for (let n = Math.round(spots.uniform(...habit.spots)); n > 0; n--)
    leave(work, spots, "spot", drawPlace(work, spots));
}

type Weights = readonly (readonly [kind: SpeckKind, weight: number])[];

/** Each specimen has more of some kinds than its process usually has. */
function leaning(habit: BlemishHabit, random: RandomStream): Weights {
  return SPECK_KINDS.flatMap((kind) => (kind === "spot" ? [] : [[kind, habit.kinds[kind] * random.logNormal(1, 0.5)]]));
}

function pickKind(weights: Weights, random: RandomStream): SpeckKind {
  let left = random.uniform(0, 1) * weights.reduce((sum, [, weight]) => sum + weight, 0);
  for (const [kind, weight] of weights) {
    left -= weight;
    if (left < 0) return kind;
  }
  return weights[0][0];
}

function leaveGroup(work: FaceWork, kinds: Weights, random: RandomStream): void {
  const middle = drawPlace(work, random);
  const kind = pickKind(kinds, random);
  const spread = random.uniform(...GROUP.spread);
  for (let n = GROUP.least + random.integer(GROUP.more); n > 0; n--) {
    const near = settle(work, middle.x + random.normal(0, 1.4 * spread), middle.y + random.normal(0, spread), 0.25);
    leave(work, random, random.chance(0.75) ? kind : pickKind(kinds, random), near);
  }
}

function leave(work: FaceWork, random: RandomStream, kind: SpeckKind, { x, y, along }: Place): void {
  const { grid, clean, bead } = work.strip;
  const speck = drawSpeck(random, kind, x, y, along);
  const k = nearestRow(grid, y) * grid.columns + nearestColumn(grid, x);
  // what was planted stays as it was cut
  if (clean[k] > 0.05 || (bead[k] < 0.2 && kind === "pit")) return;
  laySpeck(work.strip, speck);
}

const anywhere = (work: FaceWork, random: RandomStream): number =>
  random.uniform(FROM_ENDS, work.joint.length - FROM_ENDS);

/** Specks come in stretches: length of these, mm, and share of specks that stay where there are fewest. */
const STRETCHES = { wavelength: 24, least: 0.08 };

/** A place along the weld where specks are many. */
function richAt(work: FaceWork, random: RandomStream, seed: number): number {
  for (;;) {
    const x = anywhere(work, random);
    const share = clamp(0.4 + 1.2 * gradient1(x / STRETCHES.wavelength, seed), STRETCHES.least, 1);
    if (random.chance(share)) return x;
  }
}

function drawPlace(work: FaceWork, random: RandomStream, x = anywhere(work, random)): Place {
  const low = toeAt(work, -1, x);
  const high = toeAt(work, 1, x);
  const across = random.uniform(0.04, 0.96);
  const luck = random.uniform(0, 1);
  const off = random.normal(0, 0.22);
  const run = random.uniform(0, 1);
  if (luck < PLACES.toe) return { x, y: (off < 0 ? low : high) - Math.sign(off) * 0.12 + 0.7 * off, along: 0 };
  if (luck < PLACES.toe + PLACES.valley && work.plan.runs.length > 1) {
    const edge = runEdgeAt(work, 1 + Math.floor(run * (work.plan.runs.length - 1)), -1, x, 0.3);
    if (!Number.isNaN(edge)) return settle(work, x, edge + 0.5 * off, 0.35);
  }
  const y = low + (high - low) * across;
  return luck < 1 - PLACES.crease ? { x, y, along: null } : settle(work, x, y, 0.9);
}

/** A pixel is compared with the metal this far before and behind it, mm. */
const BESIDE = 0.5;

/** The deepest crease near a place: within `reach` mm along the weld and a third of it across. */
function settle(work: FaceWork, x: number, y: number, reach: number): Place {
  const { grid, z, travel } = work.strip;
  const beside = Math.round(BESIDE * grid.perMm);
  const i0 = clamp(nearestColumn(grid, x - reach), beside, grid.columns - 1 - beside);
  const i1 = clamp(nearestColumn(grid, x + reach), beside, grid.columns - 1 - beside);
  const j0 = clamp(nearestRow(grid, y - reach / 3), 1, grid.rows - 2);
  const j1 = clamp(nearestRow(grid, y + reach / 3), 1, grid.rows - 2);
  let best = j0 * grid.columns + i0;
  let deepest = Number.NEGATIVE_INFINITY;
  for (let j = j0; j <= j1; j++)
    for (let i = i0; i <= i1; i++) {
      const k = j * grid.columns + i;
      const below = z[k - beside] + z[k + beside] - 2 * z[k];
      if (below <= deepest) continue;
      deepest = below;
      best = k;
    }
  const alongX = travel[best + 1] - travel[best - 1];
  const alongY = travel[best + grid.columns] - travel[best - grid.columns];
  return {
    x: columnX(grid, best % grid.columns),
    y: rowY(grid, Math.floor(best / grid.columns)),
    // a crease froze at one time
    along: alongX === 0 && alongY === 0 ? null : Math.atan2(alongX, -alongY),
  };
}
