import { clamp, ease, mix } from "../../math";
import { columnX, rowY } from "../../surface";
import type { Field } from "../field";
import type { RunPlan, Segment } from "../plan";
import { craterRings, isNearCrater } from "./crater-rings";
import { frontFusion, MERGED, MERGING, rearFusion, toeFusion } from "./fusion";
import { type Pool, rowsOf } from "./pool";
import type { RippleNoise } from "./ripple-noise";
import { placeInTrain, type RippleTrain, valueAt } from "./ripple-train";
import { sharePower } from "./share-power";

/** One electrode length at the moment it is laid. */
export interface Laying {
  readonly field: Field;
  readonly run: RunPlan;
  readonly segment: Segment;
  readonly pool: Pool;
  readonly train: RippleTrain;
  readonly noise: RippleNoise;
  /** Number that marks the run in the field. */
  readonly number: number;
}

/** Beyond this pitch the bend no longer grows with it: the ripples of a weave would fold over themselves. */
const MOST_BEND = 1.05;
const BEND = { wide: 0.55, fine: 0.13 };
/** Reach of a toe with its ripple's height and with its ripple's luck, mm. */
const SCALLOP = { height: 0.1, luck: 0.08, fine: 0.05 };
/** How far the fine ripple is bent, mm. */
const FINE_BEND = { weave: 0.08, stringer: 0.25 };
/** No metal is looked for further out than this, in planned half widths. */
const REACH = 1.12;
const LEAST_TOE = 0.15;
/** Place across of what the pool does not reach. */
const NOWHERE = 2;
/** A low bead ripples less, a hollow one still this much. */
const LEAST_RIPPLE = 0.4;
const TINT = 0.16;

/** What is the same along a column of the pool, and what has been worked out of the row being laid; a value per column. */
interface Lines {
  readonly travel: Float32Array;
  readonly tail: Float32Array;
  readonly ripple: Float32Array;
  readonly scallop: Float32Array;
  /** Travel of the pool when the metal froze here, mm. */
  readonly frozen: Float32Array;
  /** Its place in the ripple train. */
  readonly place: Float64Array;
  /** Distance of the toe from the centre, mm. */
  readonly toe: Float32Array;
  /** Place across, 0 centre .. 1 toe; above MERGED where there is no metal. */
  readonly across: Float32Array;
  /** Ripples above the smooth bead, mm. */
  readonly relief: Float32Array;
  /** How much of the pool's height counts. */
  readonly fused: Float32Array;
}

/**
 * Lays the metal of one pool on the heights that are there, and marks it with its run, its travel and its place across. Row by
 * row as the planes lie in memory, in loops short enough for the compiler to inline what they call.
 */
export function depositPool(laying: Laying): void {
  const { field, pool } = laying;
  const { grid } = field;
  const lines = linesOf(laying);
  let first = grid.rows;
  let last = -1;
  for (let i = pool.first; i <= pool.last; i++) {
    if (pool.half[i] <= 0) continue;
    const rows = rowsOf(pool, grid, i);
    first = Math.min(first, rows.from);
    last = Math.max(last, rows.to);
  }
  for (let j = first; j <= last; j++) {
    freeze(laying, lines, j);
    relieve(laying, lines, j);
    fuse(laying, lines, j);
    pile(laying, lines, j);
    mark(laying, lines, j);
  }
}

function linesOf({ field, run, segment, pool }: Laying): Lines {
  const { columns } = field.grid;
  const line = () => new Float32Array(columns);
  const along = (value: (i: number) => number) => {
    const values = line();
    for (let i = pool.first; i <= pool.last; i++) values[i] = value(i);
    return values;
  };
  return {
    travel: along((i) => pool.direction * columnX(field.grid, i)),
    tail: along((i) => run.tail[i] * pool.half[i]),
    ripple: along(
      (i) => (segment.rippleFactor ?? 1) * run.ripple[i] * clamp(pool.height[i] * 0.5 + 0.5, LEAST_RIPPLE, 1),
    ),
    scallop: along((i) => pool.half[i] / (pool.half[i] + 0.8)),
    frozen: line(),
    place: new Float64Array(columns),
    toe: line(),
    across: line(),
    relief: line(),
    fused: line(),
  };
}

/** Where the metal of row j froze and how far out the toe lies there: bent by the noise, and all that belongs to single ripples is looked up in it. */
function freeze({ field, run, pool, train, noise }: Laying, lines: Lines, j: number): void {
  const { travel, tail, scallop, frozen, toe, across } = lines;
  const places = lines.place;
  const { centre, half, minus, plus, tilt } = pool;
  const { bend, bendFine } = noise;
  const y = rowY(field.grid, j);
  const bent = run.bend * Math.min(run.pitch, MOST_BEND);
  for (let i = pool.first, k = j * field.grid.columns + i; i <= pool.last; i++, k++) {
    const dy = y - centre[i];
    const isMinus = dy < 0;
    const planned = isMinus ? minus[i] : plus[i];
    const far = Math.abs(dy);
    across[i] = NOWHERE;
    if (half[i] <= 0 || far > REACH * planned) continue;
    const front = travel[i] + tail[i] * (1 - sharePower(Math.min(1, far / planned), run.tailPower)) + tilt[i] * dy;
    frozen[i] = front + (BEND.wide * bend[k] + BEND.fine * bendFine[k]) * bent;
    const place = placeInTrain(train, frozen[i]);
    places[i] = place;
    // looked up in travel, not in x, or the flanks get ridges
    const reach =
      SCALLOP.height * valueAt(isMinus ? train.height : train.forked, place) +
      SCALLOP.luck * valueAt(train.reach, place) +
      run.dwell * valueAt(isMinus ? train.dwellMinus : train.dwellPlus, place) +
      SCALLOP.fine * bendFine[k];
    const ragged = isMinus ? run.raggedMinus[i] : run.raggedPlus[i];
    toe[i] = Math.max(LEAST_TOE, planned + reach * ragged * scallop[i]);
    across[i] = far / toe[i];
  }
}

/** Ripples, fine ripples and the crater's dish of row j above the smooth bead, mm. */
function relieve({ field, run, pool, train, noise }: Laying, lines: Lines, j: number): void {
  const { travel, ripple, frozen, across, relief } = lines;
  const places = lines.place;
  const y = rowY(field.grid, j);
  const ridged = run.weave ? FINE_BEND.weave : FINE_BEND.stringer;
  const { crater } = pool;
  for (let i = pool.first, k = j * field.grid.columns + i; i <= pool.last; i++, k++) {
    if (across[i] > MERGED) continue;
    const place = places[i];
    const fork = clamp(0.5 + 1.2 * noise.fork[k], 0, 1);
    let height = mix(valueAt(train.height, place), valueAt(train.forked, place), fork);
    let fine = run.fine * run.ripple[i];
    let dish = 0;
    if (crater && isNearCrater(crater, travel[i])) {
      const rings = craterRings(pool, crater, train, travel[i], y, noise.bend[k]);
      height = mix(height, rings.relief, rings.share);
      fine *= 1 - rings.share;
      dish = rings.dish;
    }
    // here and there only: unbroken, such fine lines look engraved
    fine *= clamp(0.3 + 1.6 * noise.bendFine[k], 0, 1);
    fine *= valueAt(train.fine, placeInTrain(train, frozen[i] + ridged * noise.bendFine[k]));
    const inside = Math.min(1, across[i]);
    const inside2 = inside * inside;
    const strength = clamp(0.85 + 0.75 * noise.strength[k], 0.2, 1.6) * (1 - inside2 * inside2 * inside2 * inside);
    relief[i] = (ripple[i] * height + fine) * strength - dish;
  }
}

/** How much of the pool's own height counts in row j. */
function fuse({ field, run, segment, pool }: Laying, { travel, across, fused }: Lines, j: number): void {
  const { centre, minus, plus } = pool;
  const y = rowY(field.grid, j);
  const wetted =
    segment.wetting > 0 ? pool.start + segment.wetting + Math.abs(segment.lapSlant ?? 0) : Number.NEGATIVE_INFINITY;
  for (let i = pool.first; i <= pool.last; i++) {
    if (across[i] > MERGED) continue;
    const dy = y - centre[i];
    let share = across[i] < MERGING ? 1 : toeFusion(across[i], dy < 0 ? run.exponentMinus[i] : run.exponentPlus[i]);
    if (travel[i] > pool.front) share *= frontFusion(pool, travel[i], Math.abs(dy), dy < 0 ? minus[i] : plus[i]);
    if (travel[i] < wetted) share *= rearFusion(pool, segment, travel[i], y, Math.sign(dy) * Math.min(1, across[i]));
    fused[i] = share;
  }
}

/** Raises row j to the metal. */
function pile({ field, run, segment, pool }: Laying, { travel, across, relief, fused }: Lines, j: number): void {
  const { centre, half, minus, plus, height, chordMinus, chordPlus } = pool;
  const { z } = field;
  const y = rowY(field.grid, j);
  const { exponentMinus, exponentPlus } = run;
  const isRestart = segment.wetting > 0;
  for (let i = pool.first, k = j * field.grid.columns + i; i <= pool.last; i++, k++) {
    if (across[i] > MERGED) continue;
    const dy = y - centre[i];
    const chord = mix(chordMinus[i], chordPlus[i], clamp((dy + minus[i]) / (minus[i] + plus[i]), 0, 1));
    const edge = sharePower(Math.min(1, across[i]), dy < 0 ? exponentMinus[i] : exponentPlus[i]);
    let metal = chord + height[i] * (1 - edge) + relief[i];
    // a restart lies on the end of the old metal and does not eat into it
    if (isRestart && travel[i] < pool.start + half[i]) metal = Math.max(metal, z[k]);
    z[k] += (metal - z[k]) * fused[i];
  }
}

function mark({ field, pool, train, number }: Laying, lines: Lines, j: number): void {
  const { grid, run, travel, bead, tint } = field;
  const { frozen, place, toe, across, fused } = lines;
  const y = rowY(grid, j);
  for (let i = pool.first, k = j * grid.columns + i; i <= pool.last; i++, k++) {
    if (across[i] > MERGED) continue;
    const covered = clamp(toe[i] * (1 - across[i]) * grid.perMm * 0.5 + 0.5, 0, 1);
    if (covered > 0.4 && fused[i] > 0.25) {
      run[k] = number;
      travel[k] = frozen[i];
      field.across[k] = (y - pool.centre[i]) / toe[i];
    }
    const shown = covered * ease(0.02, 0.3, fused[i]);
    if (shown > bead[k]) bead[k] = shown;
    const lightness = TINT * valueAt(train.tint, place[i]);
    tint[k] += (lightness - tint[k]) * covered * Math.min(1, fused[i] * 1.3);
  }
}
