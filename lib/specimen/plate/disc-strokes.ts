import { clamp, tabulate } from "../../math";
import type { RandomStream } from "../../random";
import { type Grid, gradient1, hash01, noiseRows, rowsBetween, unsetFloatGrid, value1 } from "../../surface";

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
  /** Which long side is crisp: the disc digs with one edge. */
  readonly crisp: 1 | -1;
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
  /** Scratch height, about -1..1. */
  scratch: 0,
  /** Slow noise that is constant along a scratch: how far single scratches reach. */
  reach: 1,
  tone: 2,
  /** How far the strokes cover what lies below; 0 where none has touched. */
  touched: 3,
  /** Direction of the scratches, doubled. */
  cosine: 4,
  sine: 5,
  /** Noise of the hand: pressure and unsteadiness. */
  press: 6,
  warp: 7,
  /** How far the direction has been decided, 0..1. */
  turned: 8,
  size: 9,
} as const;

/** Longer than the discs reach from any offset: 256 mm. */
const TABLE = 4096;
/** mm between entries: half a pixel of the strip, so that nothing finer than the pixels can flicker. */
const TABLE_STEP = 0.0625;
const TABLES = 3;
/** No entry of the reach table is further from 0. */
const REACH_MOST = 1.04;
/** What shows less than this through the strokes above is left out. */
const COVERED = 0.02;

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
    { first: true, width: [6, 9.5], long: [12, 24], gap: [5.5, 12], opacity: [1, 1], spread: 0.16 },
    { first: false, width: [2.5, 6.5], long: [7, 18], gap: [8, 21], opacity: [0.4, 0.92], spread: 0.15 },
    { first: false, width: [2, 5], long: [5, 14], gap: [9, 24], opacity: [0.3, 0.85], spread: 0.2 },
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
        offset: random.uniform(0, 120),
        gain: random.uniform(0.7, 1.25),
        opacity: random.uniform(layer.opacity[0], layer.opacity[1]),
        tone: random.normal(0, 0.07),
        crisp: random.pick([1, -1]),
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

/** Rows of a patch, given in mm, that nobody has touched yet. */
export function untouched(grid: Grid, rows: readonly [from: number, to: number], seed: number): Ground {
  const { first, end } = rowsBetween(grid, rows);
  const press = noiseRows(grid, 8, 5, seed + 54, 3, 0.5, rows);
  const warp = noiseRows(grid, 14, 14, seed + 53, 1, 0.5, rows);
  const pressLine = new Float32Array(grid.columns);
  const warpLine = new Float32Array(grid.columns);
  const values = unsetFloatGrid(GROUND.size * grid.columns * (end - first));
  for (let j = first, g = 0; j < end; j++) {
    press(j, pressLine, 0);
    warp(j, warpLine, 0);
    for (let i = 0; i < grid.columns; i++, g += GROUND.size) {
      values[g + GROUND.scratch] = 0;
      values[g + GROUND.reach] = 0;
      values[g + GROUND.tone] = 0;
      values[g + GROUND.touched] = 0;
      values[g + GROUND.cosine] = 0;
      values[g + GROUND.sine] = 0;
      values[g + GROUND.press] = pressLine[i];
      values[g + GROUND.warp] = warpLine[i];
      values[g + GROUND.turned] = 0;
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
  const { centreX, centreY, radius, cosine, sine, halfWidth, halfLength, offset, gain, opacity, tone, crisp } = stroke;
  const nearest = (radius - halfWidth) ** 2;
  const furthest = (radius + halfWidth) ** 2;
  const middleX = centreX + cosine * radius;
  const middleY = centreY + sine * radius;
  const reachX = halfWidth * Math.abs(cosine) + halfLength * Math.abs(sine) + 4;
  const reachY = halfWidth * Math.abs(sine) + halfLength * Math.abs(cosine) + 4;
  const i0 = clamp(Math.floor((middleX - reachX - grid.x0) * perMm), 0, columns);
  const i1 = clamp(Math.ceil((middleX + reachX - grid.x0) * perMm), 0, columns);
  const j0 = clamp(Math.floor((middleY - reachY - grid.y0) * perMm), first, end);
  const j1 = clamp(Math.ceil((middleY + reachY - grid.y0) * perMm), first, end);
  // where the arc does not come round inside the box, each row meets it in one short span
  const oneSpan = Math.abs(cosine) * radius > reachX;
  const heading = cosine > 0 ? 1 : -1;
  const mask = TABLE - 1;
  const step = 1 / perMm;
  // beyond this no scratch reaches: tells it before any table is looked at
  const longest = halfLength + 3 * REACH_MOST + 1.9;
  const inverseWidth = 1 / halfWidth;
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
    for (let i = from, g = ((j - first) * columns + from) * GROUND.size; i < to; i++, g += GROUND.size) {
      const open = 1 - values[g + GROUND.touched];
      if (open < COVERED) continue;
      const dx = grid.x0 + (i + 0.5) * step - centreX;
      const r2 = dx * dx + dy2;
      const ahead = dy * cosine - dx * sine;
      if (r2 < nearest || r2 > furthest || ahead > longest || ahead < -longest) continue;
      const r = Math.sqrt(r2);
      const across = (r - radius) * inverseWidth;
      const across2 = across * across;
      const side = across * crisp > 0 ? across2 * across2 * across2 : across2;
      const left = 1 - side - 0.3 * values[g + GROUND.press];
      if (left <= 0) continue;
      const warp = values[g + GROUND.warp];
      const place = (r + offset + 0.1 * warp) * (1 / TABLE_STEP);
      const n = place | 0;
      const grain = ends[n & mask];
      let along = ahead / (halfLength + 3 * grain + 1.7 * warp);
      along *= along;
      let share = (left - along * along) * 2;
      if (along > 1 || share <= 0) continue;
      share = share >= 1 ? opacity : opacity * share * share * (3 - 2 * share);
      const low = table[n & mask];
      const line = (low + (place - n) * (table[(n + 1) & mask] - low)) * gain;
      const seen = open * share;
      values[g + GROUND.scratch] += line * seen;
      values[g + GROUND.reach] += grain * seen;
      values[g + GROUND.tone] += tone * seen;
      values[g + GROUND.touched] += seen;
      // the direction switches within a narrow zone: half-way angles would belong to no scratch
      const turned = (1 - values[g + GROUND.turned]) * clamp(share * 3.2 + 0.12 * low - 1.1, 0, 1);
      if (turned > 0) {
        const weight = turned / r2;
        values[g + GROUND.cosine] += (dy2 - dx * dx) * weight;
        values[g + GROUND.sine] -= 2 * dx * dy * weight;
        values[g + GROUND.turned] += turned;
      }
    }
  }
}
