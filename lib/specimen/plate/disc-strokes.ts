import { clamp, tabulate } from "../../math";
import type { RandomStream } from "../../random";
import { type Grid, gradient1, hash01, noiseRows, rowsBetween, rowY, unsetFloatGrid, value1 } from "../../surface";

/**
 * One touch of the grinding disc: an arc of the disc's own radius, touching over a short length. Scratches are circles about
 * (centreX, centreY); lengths in mm.
 */
export interface Stroke {
  readonly centreX: number;
  readonly centreY: number;
  readonly radius: number;
  /** Direction from the centre to the middle of the touch. */
  readonly cosine: number;
  readonly sine: number;
  readonly halfWidth: number;
  readonly halfLength: number;
  /** Which table of scratches, from where in it, and how deep they are. */
  readonly table: number;
  readonly offset: number;
  readonly gain: number;
  readonly opacity: number;
  readonly tone: number;
  /** Which long side slidesOff harder: the disc digs with one edge. */
  readonly crisp: 1 | -1;
  /** Which end it slides off at; at the other it slidesOff. */
  readonly slidesOff: 1 | -1;
  /** Added to the height of its scratches: 0, or that of a single deep one. */
  readonly deep: number;
}

/**
 * What the strokes leave on the rows of one patch. The values of a pixel lie side by side: strokes cross the rows in
 * short spans, and with a plane for each they take a third longer.
 */
export interface Ground {
  /** First row and the one beyond the last. */
  readonly first: number;
  readonly end: number;
  readonly values: Float32Array;
}

/** Places of a pixel's values, and how many there are. */
export const GROUND = {
  /** Scratch height, about -1..1; of a single deep one lower. */
  scratch: 0,
  /** Slow noise that is constant along a scratch: how far single scratches reach. */
  reach: 1,
  tone: 2,
  /** How far the strokes cover what lies below; 0 where none has touched. */
  touched: 3,
  /** Direction of the scratches, doubled; 0 and 0 where none is decided. */
  cosine: 4,
  sine: 5,
  /** Noise of the hand: pressure and unsteadiness. */
  press: 6,
  warp: 7,
  size: 8,
} as const;

/** Longer than the discs reach from any offset: 256 mm. */
const TABLE = 4096;
/** mm between entries: half a pixel of the strip, so that nothing finer than the pixels can flicker. */
const TABLE_STEP = 0.0625;
const TABLES = 3;
/** No entry of the reach table is further from 0. */
const REACH_MOST = 1.04;
/** How much farther single scratches reach than the rest, mm and against half the stroke's length. */
const STRAGGLE = { least: 2, share: 0.24 };
/** How strongly the height of a scratch decides whether it is there at a border. */
const FRAYED = 0.3;
/** What shows less than this through the strokes above is left out. */
const COVERED = 0.06;

/** Strokes over one side of the joint from |y| = inner to outer, in the order in which they lie on each other. */
export function planStrokes(
  side: 1 | -1,
  inner: number,
  outer: number,
  length: number,
  random: RandomStream,
): readonly Stroke[] {
  const strokes: Stroke[] = [];
  const flip = random.pick([1, -1]);
  const lean = random.uniform(0.3, 0.75);
  const turn = random.pick([0, Math.PI]);
  const wander = random.seed();
  const layers = [
    { first: true, width: [7.5, 12], long: [12, 24], gap: [7, 12.5], opacity: [1, 1], spread: 0.16, deep: 0 },
    { first: false, width: [3, 7.5], long: [7, 19], gap: [9, 23], opacity: [0.35, 0.95], spread: 0.15, deep: 0 },
    { first: false, width: [2.5, 6], long: [5, 16], gap: [11, 28], opacity: [0.3, 0.9], spread: 0.24, deep: 0 },
    // a grain that stands out of the disc leaves one scratch across all others
    { first: false, width: [0.09, 0.17], long: [2, 11], gap: [3, 26], opacity: [0.4, 0.9], spread: 0.35, deep: -2 },
  ] as const;
  for (const layer of layers) {
    for (let x = -16; x < length + 16; x += random.uniform(layer.gap[0], layer.gap[1])) {
      const odd = !layer.first && random.chance(0.07) ? 0.45 : 0;
      const angle = flip * (lean + 0.42 * gradient1(x / 47, wander) + random.normal(0, layer.spread) + odd) + turn;
      const radius = random.uniform(52, 63);
      const y = side * random.uniform(inner - 1, outer + 3);
      // a covering stroke must cross the whole band wherever its middle lies
      const centreY = layer.first ? side * (inner + outer) * 0.5 + random.normal(0, 2.5) : y;
      const stretch = layer.first ? (outer - inner) * 0.85 : 0;
      strokes.push({
        centreX: x - Math.cos(angle) * radius,
        centreY: centreY - Math.sin(angle) * radius,
        radius,
        cosine: Math.cos(angle),
        sine: Math.sin(angle),
        halfWidth: random.uniform(layer.width[0], layer.width[1]),
        halfLength: Math.max(stretch, random.uniform(layer.long[0], layer.long[1])),
        table: random.integer(TABLES),
        offset: random.uniform(20, 120),
        gain: random.uniform(0.7, 1.25),
        opacity: random.uniform(layer.opacity[0], layer.opacity[1]),
        tone: random.normal(0, 0.04),
        crisp: random.pick([1, -1]),
        slidesOff: random.pick([1, -1]),
        deep: layer.deep * random.uniform(0.4, 1),
      });
    }
  }
  return strokes;
}

/** What the grit of the discs is like: profiles across the scratches, and how far each one reaches. */
export interface Grit {
  readonly profiles: readonly Float32Array[];
  readonly reach: Float32Array;
}

export function drawGrit(seed: number): Grit {
  return {
    profiles: Array.from({ length: TABLES }, (_, n) => scratchTable(seed + 50 + 10 * n)),
    reach: reachTable(seed + 93),
  };
}

/**
 * Rows of a patch, given in mm, that nobody has touched yet. What lies farther than `furthest` (mm from the centre line, a value
 * per column) counts as covered: no stroke is wanted there.
 */
export function untouched(
  grid: Grid,
  rows: readonly [from: number, to: number],
  furthest: Float32Array,
  seed: number,
): Ground {
  const { first, end } = rowsBetween(grid, rows);
  const press = noiseRows(grid, 8, 5, seed + 54, 3, 0.5, rows);
  const warp = noiseRows(grid, 14, 14, seed + 53, 1, 0.5, rows);
  const pressLine = new Float32Array(grid.columns);
  const warpLine = new Float32Array(grid.columns);
  const values = unsetFloatGrid(GROUND.size * grid.columns * (end - first));
  for (let j = first, g = 0; j < end; j++) {
    press(j, pressLine, 0);
    warp(j, warpLine, 0);
    const away = Math.abs(rowY(grid, j));
    for (let i = 0; i < grid.columns; i++, g += GROUND.size) {
      values[g + GROUND.scratch] = 0;
      values[g + GROUND.reach] = 0;
      values[g + GROUND.tone] = 0;
      values[g + GROUND.touched] = away > furthest[i] ? 1 : 0;
      values[g + GROUND.cosine] = 0;
      values[g + GROUND.sine] = 0;
      values[g + GROUND.press] = pressLine[i];
      values[g + GROUND.warp] = warpLine[i];
    }
  }
  return { first, end, values };
}

/** Lays strokes on the ground, later ones over earlier ones: begins with the last and leaves out what is covered already. */
export function layStrokes(grid: Grid, ground: Ground, strokes: readonly Stroke[], grit: Grit): void {
  for (let n = strokes.length - 1; n >= 0; n--) layStroke(grid, ground, strokes[n], grit);
}

/** Cross-section of the scratches of one disc: grit of all sizes, now and then a deep one; smoothed so that it does not break into dots. */
function scratchTable(seed: number): Float32Array {
  const raw = tabulate(TABLE, (n) => {
    const at = n * TABLE_STEP;
    const grit =
      1.5 * (hash01(n, 1, seed) * 2 - 1) + 0.45 * value1(at / 0.33, seed) + 0.16 * value1(at / 0.9, seed + 1);
    const deep = hash01(n, 2, seed) < 0.01 ? 5 * hash01(n, 4, seed) : 0;
    return grit + 0.1 * value1(at / 2.3, seed + 2) - deep;
  });
  const at = (n: number) => raw[n & (TABLE - 1)];
  return tabulate(TABLE, (n) => 0.06 * (at(n - 2) + at(n + 2)) + 0.24 * (at(n - 1) + at(n + 1)) + 0.4 * at(n));
}

/** How far each scratch reaches beyond the others, about -1..1. */
function reachTable(seed: number): Float32Array {
  return tabulate(TABLE, (n) => {
    const at = n * TABLE_STEP;
    return 0.42 * value1(at / 2.6, seed) + 0.34 * value1(at / 0.62, seed + 1) + 0.28 * value1(at / 0.3, seed + 2);
  });
}

function layStroke(grid: Grid, { first, end, values }: Ground, stroke: Stroke, grit: Grit): void {
  const table = grit.profiles[stroke.table];
  const ends = grit.reach;
  const { columns, perMm } = grid;
  const { centreX, centreY, radius, cosine, sine, halfWidth, halfLength, offset, gain, opacity, tone } = stroke;
  const { crisp, slidesOff, deep } = stroke;
  // where `across` below comes to 1: a little more than half the width inside, a little less outside
  const nearest = radius * (radius - 2 * halfWidth);
  const furthest = radius * (radius + 2 * halfWidth);
  const inner = radius - Math.sqrt(nearest);
  const middleX = centreX + cosine * radius;
  const middleY = centreY + sine * radius;
  // single scratches run on while the disc slides off; beyond `longest` none reaches, which is told before any table is looked at
  const straggle = STRAGGLE.least + STRAGGLE.share * halfLength;
  const longest = halfLength + straggle * REACH_MOST + 1.9;
  const reachX = inner * Math.abs(cosine) + longest * Math.abs(sine);
  const reachY = inner * Math.abs(sine) + longest * Math.abs(cosine);
  const i0 = clamp(Math.floor((middleX - reachX - grid.x0) * perMm), 0, columns);
  const i1 = clamp(Math.ceil((middleX + reachX - grid.x0) * perMm), 0, columns);
  const j0 = clamp(Math.floor((middleY - reachY - grid.y0) * perMm), first, end);
  const j1 = clamp(Math.ceil((middleY + reachY - grid.y0) * perMm), first, end);
  // where the arc does not come round inside the box, each row meets it in one short span
  const oneSpan = Math.abs(cosine) * radius > reachX;
  const heading = cosine > 0 ? 1 : -1;
  const mask = TABLE - 1;
  const step = 1 / perMm;
  const radius2 = radius * radius;
  const inverseDiameter = 0.5 / radius;
  const inverseWidth = 1 / halfWidth;
  const inverseLength = 1 / halfLength;
  for (let j = j0; j < j1; j++) {
    const dy = grid.y0 + (j + 0.5) / perMm - centreY;
    const dy2 = dy * dy;
    if (dy2 > furthest) continue;
    let from = i0;
    let to = i1;
    if (oneSpan) {
      const a = centreX + heading * Math.sqrt(Math.max(0, nearest - dy2));
      const b = centreX + heading * Math.sqrt(furthest - dy2);
      from = Math.max(from, Math.floor((Math.min(a, b) - grid.x0) * perMm));
      to = Math.min(to, Math.ceil((Math.max(a, b) - grid.x0) * perMm));
    }
    if (sine !== 0) {
      const a = (dy * cosine - longest) / sine;
      const b = (dy * cosine + longest) / sine;
      from = Math.max(from, Math.floor((Math.min(a, b) + centreX - grid.x0) * perMm));
      to = Math.min(to, Math.ceil((Math.max(a, b) + centreX - grid.x0) * perMm));
    }
    for (let i = from, g = ((j - first) * columns + from) * GROUND.size; i < to; i++, g += GROUND.size) {
      const open = 1 - values[g + GROUND.touched];
      if (open < COVERED) continue;
      const dx = grid.x0 + (i + 0.5) * step - centreX;
      const r2 = dx * dx + dy2;
      const ahead = dy * cosine - dx * sine;
      // to first order the distance from the middle of the stroke: no root for a pixel, and scratches a little closer inside
      const beside = (r2 - radius2) * inverseDiameter;
      const across = beside * inverseWidth;
      const across2 = across * across;
      const press = values[g + GROUND.press];
      // pressure comes in from both sides, quicker where it digs
      const left = (1 - across2 * (across * crisp > 0 ? 0.4 + 0.6 * across2 : 1)) * (1 - 0.5 * press);
      if (left <= 0) continue;
      const warp = values[g + GROUND.warp];
      const place = (beside + offset + 0.1 * warp) * (1 / TABLE_STEP);
      const n = place | 0;
      const grain = ends[n & mask];
      const along = Math.max(0, Math.abs(ahead) - straggle * grain - 1.7 * warp) * inverseLength;
      const along2 = along * along;
      if (along2 > 1) continue;
      const low = table[n & mask];
      // at its borders only the grit that stands out touches: they dissolve into scratches
      const stands = grain - low;
      const met = 1.3 * (left - along2 * (ahead * slidesOff > 0 ? 1 : along2)) + FRAYED * stands;
      if (met <= 0) continue;
      const held = Math.min(1, met);
      const share = opacity * held * held * (3 - 2 * held);
      const line = deep + (low + (place - n) * (table[(n + 1) & mask] - low)) * gain;
      const seen = open * share;
      values[g + GROUND.scratch] += line * seen;
      values[g + GROUND.reach] += grain * seen;
      values[g + GROUND.tone] += tone * seen;
      values[g + GROUND.touched] += seen;
      // a pixel shows one direction, since half-way angles would belong to no scratch; at a border they lie side by side
      if (opacity * met + 0.7 * grain < 0.6 || values[g + GROUND.cosine] !== 0) continue;
      values[g + GROUND.cosine] = (dy2 - dx * dx) / r2;
      values[g + GROUND.sine] = (-2 * dx * dy) / r2;
    }
  }
}
