import { clamp, ease, mix } from "../../math";
import { columnX, rowY } from "../../surface";
import type { Field } from "../field";
import type { RunPlan, Segment } from "../plan";
import { craterRings, isNearCrater } from "./crater-rings";
import { frontFusion, MERGED, rearFusion, toeFusion } from "./fusion";
import { type Pool, rowsOf } from "./pool";
import type { RippleNoise } from "./ripple-noise";
import { placeInTrain, type RippleTrain, valueAt } from "./ripple-train";

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
/** A low bead ripples less, a hollow one still this much. */
const LEAST_RIPPLE = 0.4;
const TINT = 0.16;

/** What is the same along one column of the pool, mm. */
interface Column {
  readonly i: number;
  readonly travel: number;
  readonly centre: number;
  readonly minus: number;
  readonly plus: number;
  readonly height: number;
  readonly chordMinus: number;
  readonly chordPlus: number;
  readonly tail: number;
  readonly tilt: number;
  readonly ripple: number;
  readonly fine: number;
  readonly scallop: number;
  readonly dwell: number;
  readonly bend: number;
}

/** Lays the metal of one pool on the heights that are there, and marks it with its run, its travel and its place across. */
export function depositPool(laying: Laying): void {
  const { field, pool } = laying;
  const { grid } = field;
  for (let i = pool.first; i <= pool.last; i++) {
    if (pool.half[i] <= 0) continue;
    const column = columnOf(laying, i);
    const rows = rowsOf(pool, grid, i);
    for (let j = rows.from; j <= rows.to; j++) layPixel(laying, column, j * grid.columns + i, rowY(grid, j));
  }
}

function columnOf({ field, run, segment, pool }: Laying, i: number): Column {
  const half = pool.half[i];
  const height = pool.height[i];
  return {
    i,
    travel: pool.direction * columnX(field.grid, i),
    centre: pool.centre[i],
    minus: pool.minus[i],
    plus: pool.plus[i],
    height,
    chordMinus: pool.chordMinus[i],
    chordPlus: pool.chordPlus[i],
    tail: run.tail[i] * half,
    tilt: pool.tilt[i],
    ripple: (segment.rippleFactor ?? 1) * run.ripple[i] * clamp(height * 0.5 + 0.5, LEAST_RIPPLE, 1),
    fine: run.fine * run.ripple[i],
    scallop: half / (half + 0.8),
    dwell: run.dwell,
    bend: run.bend * Math.min(run.pitch, MOST_BEND),
  };
}

function layPixel(laying: Laying, column: Column, k: number, y: number): void {
  const { field, run, segment, pool, train, noise } = laying;
  const { i, travel } = column;
  const dy = y - column.centre;
  const isMinus = dy < 0;
  const planned = isMinus ? column.minus : column.plus;
  const far = Math.abs(dy);
  if (far > REACH * planned) return;
  const frozen = frozenTravel(run, column, noise, k, dy, Math.min(1, far / planned));
  const place = placeInTrain(train, frozen);
  const ragged = isMinus ? run.raggedMinus[i] : run.raggedPlus[i];
  const toe = Math.max(
    LEAST_TOE,
    planned + scallopAt(train, place, isMinus, column.dwell, noise.bendFine[k]) * ragged * column.scallop,
  );
  const s = far / toe;
  if (s > MERGED) return;
  const inside = Math.min(1, s);
  const exponent = isMinus ? run.exponentMinus[i] : run.exponentPlus[i];
  const chord = mix(
    column.chordMinus,
    column.chordPlus,
    clamp((dy + column.minus) / (column.minus + column.plus), 0, 1),
  );
  let metal = chord + column.height * (1 - inside ** exponent) + reliefAt(laying, column, k, y, frozen, place, inside);
  let fused = toeFusion(s, exponent);
  if (travel > pool.front) fused *= frontFusion(pool, travel, far, planned);
  if (segment.wetting > 0 && travel < pool.start + segment.wetting) {
    fused *= rearFusion(pool, segment, travel, y, inside);
  }
  // a restart lies on the end of the old metal and does not eat into it
  if (segment.wetting > 0 && travel < pool.start + pool.half[i]) metal = Math.max(metal, field.z[k]);
  field.z[k] += (metal - field.z[k]) * fused;
  mark(laying, k, clamp((toe - far) * field.grid.perMm * 0.5 + 0.5, 0, 1), fused, frozen, dy / toe, place);
}

/** Travel of the pool when the metal here froze, bent by the noise: all that belongs to single ripples is looked up in it. */
function frozenTravel(run: RunPlan, column: Column, noise: RippleNoise, k: number, dy: number, share: number): number {
  const front = column.travel + column.tail * (1 - share ** run.tailPower) + column.tilt * dy;
  return front + (BEND.wide * noise.bend[k] + BEND.fine * noise.bendFine[k]) * column.bend;
}

/** How far the toe reaches out with the ripple that froze there, mm: looked up in travel, not in x, or the flanks get ridges. */
function scallopAt(train: RippleTrain, place: number, isMinus: boolean, dwell: number, bendFine: number): number {
  return (
    SCALLOP.height * valueAt(isMinus ? train.height : train.forked, place) +
    SCALLOP.luck * valueAt(train.reach, place) +
    dwell * valueAt(isMinus ? train.dwellMinus : train.dwellPlus, place) +
    SCALLOP.fine * bendFine
  );
}

/** Ripples, fine ripples and the crater's dish above the smooth bead, mm. */
function reliefAt(
  { run, pool, train, noise }: Laying,
  column: Column,
  k: number,
  y: number,
  frozen: number,
  place: number,
  inside: number,
): number {
  const fork = clamp(0.5 + 1.2 * noise.fork[k], 0, 1);
  let ripple = mix(valueAt(train.height, place), valueAt(train.forked, place), fork);
  let dish = 0;
  let fineShare = 1;
  if (pool.crater && isNearCrater(pool.crater, column.travel)) {
    const rings = craterRings(pool, pool.crater, train, column.travel, y, noise.bend[k]);
    ripple = mix(ripple, rings.relief, rings.share);
    fineShare = 1 - rings.share;
    dish = rings.dish;
  }
  const fineBend = (run.weave ? FINE_BEND.weave : FINE_BEND.stringer) * noise.bendFine[k];
  const fine = column.fine * fineShare * valueAt(train.fine, placeInTrain(train, frozen + fineBend));
  const strength = clamp(0.85 + 0.75 * noise.strength[k], 0.2, 1.6) * (1 - inside ** 7);
  return (column.ripple * ripple + fine) * strength - dish;
}

function mark(
  { field, train, number }: Laying,
  k: number,
  covered: number,
  fused: number,
  frozen: number,
  across: number,
  place: number,
): void {
  if (covered > 0.4 && fused > 0.25) {
    field.run[k] = number;
    field.travel[k] = frozen;
    field.across[k] = across;
  }
  const shown = covered * ease(0.02, 0.3, fused);
  if (shown > field.bead[k]) field.bead[k] = shown;
  field.tint[k] += (TINT * valueAt(train.tint, place) - field.tint[k]) * covered * Math.min(1, fused * 1.3);
}
