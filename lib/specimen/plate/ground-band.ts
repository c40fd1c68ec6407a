import { clamp, ease, tabulate } from "../../math";
import {
  columnX,
  fractal1,
  type Grid,
  gradient1,
  noiseRows,
  rowsBetween,
  rowY,
  type WriteRow,
  withGridRoom,
} from "../../surface";
import { type Field, mixMaterial } from "../field";
import type { FaceWork } from "../work";
import {
  drawGrit,
  GROUND,
  type Grit,
  type Ground,
  layStrokes,
  planStrokes,
  type Stroke,
  untouched,
} from "./disc-strokes";
import { patchesOf } from "./patches";
import { plateNoise } from "./plate-noise";
import { PLATE_TONES as TONES } from "./tones";

/** The band may wander this far beyond its mean width, mm. */
const WANDER = 9;
/** Beyond its limit the band runs out over these distances; farther out no stroke is looked for, mm. */
const RUN_OUT = { from: 3.5, to: 6.5 };
/** Nobody leaves scale this near to the joint, mm from the groove's edge. */
const ALWAYS_BARE = 4;
/** The plates are ground this far beyond the edge of the joint, mm. */
const INTO_JOINT = 1;

interface BandSide {
  readonly side: 1 | -1;
  readonly strokes: readonly Stroke[];
  readonly limit: (x: number) => number;
}

/** Parent metal ground bright beside the groove: strokes of a disc, ending in half-removed scale. */
export function grindBand(work: FaceWork): void {
  const random = work.random.child("plate/band");
  const seed = random.seed();
  const inner = work.plan.groove - 2;
  const outer = work.plan.groove + work.look.bandWidth;
  const sides: BandSide[] = ([-1, 1] as const).map((side) => ({
    side,
    strokes: planStrokes(side, inner, outer + 4, work.joint.length, random.child(`side ${side}`)),
    limit: bandLimit(outer, side, seed),
  }));
  const grit = drawGrit(seed);
  for (const field of patchesOf(work)) {
    withGridRoom(() => grindPatch(work, field, sides, grit, seed, outer + WANDER));
  }
}

/** Limit of the band along x for one side, mm from the centre line: the hand drifts, hurries, goes over a place again. */
function bandLimit(outer: number, side: 1 | -1, seed: number): (x: number) => number {
  const own = seed + 511 + 40 * side;
  return (x) =>
    outer +
    2.6 * gradient1(x / 53, own) +
    2.1 * gradient1(x / 21, own + 1) +
    1.2 * gradient1(x / 8.3, own + 2) +
    0.5 * fractal1(x / 3.1, own + 3, 2);
}

function grindPatch(
  work: FaceWork,
  field: Field,
  sides: readonly BandSide[],
  grit: Grit,
  seed: number,
  furthest: number,
): void {
  const { grid } = field;
  const rows = [-furthest, furthest] as const;
  if (isOutside(grid, rows)) return;
  const blotchFine = plateNoise(work, field, "blotchFine", rows);
  const flake = plateNoise(work, field, "flake", rows);
  const touch = noiseRows(grid, 3.1, 2.6, seed + 60, 2, 0.6, rows);
  const { groove } = work.plan;
  // the joint is cut out of the plates afterwards
  const edge = Math.max(0, groove - INTO_JOINT);
  for (const { side, strokes, limit } of sides) {
    const beside = side > 0 ? ([edge, furthest] as const) : ([-furthest, -edge] as const);
    if (isOutside(grid, beside)) continue;
    const limits = tabulate(grid.columns, (i) => limit(columnX(grid, i)));
    const ground = untouched(
      grid,
      beside,
      limits.map((y) => y + RUN_OUT.to),
      seed,
    );
    const band: Band = { groove, ground, blotchFine, flake, touch };
    layStrokes(grid, ground, strokes, grit);
    bareMetal(field, beside, band, limits);
  }
}

function isOutside(grid: Grid, rows: readonly [from: number, to: number]): boolean {
  const { first, end } = rowsBetween(grid, rows);
  return first >= end;
}

/** What is known of the band on one patch, a value per pixel. */
interface Band {
  readonly groove: number;
  readonly ground: Ground;
  readonly blotchFine: Float32Array;
  readonly flake: Float32Array;
  readonly touch: WriteRow;
}

/** How much of one row is thinned scale and how much bare metal, a share per column. */
interface Laid {
  readonly touch: Float32Array;
  readonly thin: Float32Array;
  readonly bare: Float32Array;
}

function bareMetal(field: Field, [from, to]: readonly [number, number], band: Band, limits: Float32Array): void {
  const { grid } = field;
  const line = () => new Float32Array(grid.columns);
  const laid: Laid = { touch: line(), thin: line(), bare: line() };
  for (let j = band.ground.first; j < band.ground.end; j++) {
    const y = rowY(grid, j);
    if (y < from || y >= to) continue;
    band.touch(j, laid.touch, 0);
    // three short loops: the compiler inlines what is called in each, but not in one long one
    takeScale(laid, band, limits, Math.abs(y), j);
    paintThinScale(field, laid.thin, band.ground, j);
    paintBareMetal(field, laid.bare, band, j);
  }
}

/** Works out how much scale the disc has left in row j, `away` mm from the centre line. */
function takeScale({ touch, thin, bare }: Laid, band: Band, limits: Float32Array, away: number, j: number): void {
  const { blotchFine, flake, groove } = band;
  const { values, first } = band.ground;
  const { length } = limits;
  const always = ease(groove + ALWAYS_BARE + 3, groove + ALWAYS_BARE, away);
  for (let i = 0, k = j * length, g = (j - first) * length * GROUND.size; i < length; i++, k++, g += GROUND.size) {
    const reach = values[g + GROUND.reach];
    thin[i] = 0;
    bare[i] = 0;
    const beyond = away - limits[i];
    if (beyond > RUN_OUT.to) continue;
    // single scratches run past the limit and the scale comes off in patches: the border is neither a line nor a row of teeth
    const inside = limits[i] - away + 0.9 * reach + 3 * blotchFine[k] + 2.4 * flake[k] + touch[i];
    const worn = ease(-6.5, 5, inside) * Math.max(0.9, values[g + GROUND.touched]);
    const left = beyond > RUN_OUT.from ? ease(RUN_OUT.to, RUN_OUT.from, beyond) : 1;
    const cover = Math.max(worn * left, always);
    if (cover <= 0.02) continue;
    const easy = 0.8 * blotchFine[k] + 0.6 * flake[k] + 0.2 * reach + 0.5 * touch[i] + 0.1 * values[g + GROUND.scratch];
    const cleared = ease(0.22, 0.95, cover + 0.55 * easy * (1.5 - cover)) * ease(0, 0.25, cover);
    // low spots keep their scale
    const low = 0.8 * values[g + GROUND.press] + 0.35 * flake[k] + 0.25 * (cleared - 0.5);
    bare[i] = cleared * ease(-0.66, -0.3, low);
    thin[i] = ease(0.02, 0.5, cover + 0.4 * easy) * (1 - bare[i]);
  }
}

function paintThinScale(field: Field, thin: Float32Array, { values, first }: Ground, j: number): void {
  const { length } = thin;
  for (let i = 0, k = j * length, g = (j - first) * length * GROUND.size; i < length; i++, k++, g += GROUND.size) {
    if (thin[i] <= 0.01) continue;
    const scratch = values[g + GROUND.scratch];
    const streak = clamp(scratch + 0.4, 0, 1);
    mixMaterial(field, k, TONES.scaleThin, 0.5, 0.34, thin[i] * (0.26 + 0.42 * streak));
    field.z[k] += 0.003 * scratch * thin[i];
  }
}

function paintBareMetal(field: Field, bare: Float32Array, { ground, blotchFine }: Band, j: number): void {
  const { z, parent, band, brush, brushAngle } = field;
  const { values, first } = ground;
  const { length } = bare;
  const colour: [number, number, number] = [0, 0, 0];
  for (let i = 0, k = j * length, g = (j - first) * length * GROUND.size; i < length; i++, k++, g += GROUND.size) {
    const share = bare[i];
    if (share <= 0.004) continue;
    band[k] = share;
    const cosine = values[g + GROUND.cosine];
    const sine = values[g + GROUND.sine];
    brush[k] = cosine === 0 ? 0 : 0.5 * share;
    brushAngle[k] = 0.5 * directionOf(cosine, sine);
    const scratch = values[g + GROUND.scratch];
    const press = values[g + GROUND.press];
    const tone = values[g + GROUND.tone];
    z[k] += (parent[k] - 0.012 + 0.0078 * scratch - z[k]) * share;
    const light = 0.88 + 0.09 * scratch + 0.1 * press + 0.1 * blotchFine[k] + 1.25 * tone;
    colour[0] = TONES.groundSteel[0] * light;
    colour[1] = TONES.groundSteel[1] * light * 0.995;
    colour[2] = TONES.groundSteel[2] * light * 0.985;
    const rough = clamp(0.39 + 0.06 * press + 0.03 * scratch - 0.3 * tone, 0.3, 0.58);
    mixMaterial(field, k, colour, rough, 0.78, 0.94 * share);
  }
}

/** atan2 to 0.004 radians (Rajan and others, IEEE Signal Processing Magazine, 2006; from memory): enough, as the brushing is kept in steps of 0.008. */
function directionOf(cosine: number, sine: number): number {
  const isFlat = Math.abs(cosine) >= Math.abs(sine);
  const ratio = isFlat ? sine / cosine : cosine / sine;
  if (Number.isNaN(ratio)) return 0;
  const angle = ratio * (Math.PI / 4 + 0.273 * (1 - Math.abs(ratio)));
  if (!isFlat) return (sine > 0 ? Math.PI / 2 : -Math.PI / 2) - angle;
  return cosine > 0 ? angle : sine >= 0 ? angle + Math.PI : angle - Math.PI;
}
