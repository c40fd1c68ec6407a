import { clamp, mix } from "../../math";
import type { RandomStream } from "../../random";
import { gradient1 } from "../../surface";
import { deepen, pauseSometimes } from "./paused-ripples";
import { indexOf, type Ripple, STEP } from "./ripple-table";

/** What irregular and what even ripples are like; a train lies between the two. */
interface Irregularity {
  /** Tightest and widest ripple as a share of the mean pitch. */
  readonly tightest: number;
  readonly widest: number;
  /** Scatter of single lengths and heights (of their logarithms), of the level of a ripple, of its crest. */
  readonly length: number;
  readonly height: number;
  readonly level: number;
  /** Slow drift of the pitch from ripple to ripple, its waves along the run, and how often the pace jumps. */
  readonly drift: number;
  readonly slow: number;
  readonly jumps: number;
  /** Shares of ripples nearly missing, standing out, and grown together. */
  readonly missing: number;
  readonly strong: number;
  readonly merged: number;
}

const NERVOUS: Irregularity = {
  tightest: 0.34,
  widest: 2.6,
  length: 0.26,
  height: 0.34,
  level: 0.37,
  drift: 0.1,
  slow: 1.05,
  jumps: 0.033,
  missing: 0.15,
  strong: 0.045,
  merged: 0.28,
};
const COINS: Irregularity = {
  tightest: 0.72,
  widest: 1.5,
  length: 0.08,
  height: 0.14,
  level: 0.14,
  drift: 0.03,
  slow: 0.4,
  jumps: 0.004,
  missing: 0.01,
  strong: 0.012,
  merged: 0.03,
};

function irregularityOf(evenness: number): Irregularity {
  const keys = Object.keys(NERVOUS) as (keyof Irregularity)[];
  return Object.fromEntries(
    keys.map((key) => [key, mix(NERVOUS[key], COINS[key], evenness)]),
  ) as unknown as Irregularity;
}

/** What a ripple train is drawn from, mm. */
export interface RippleStyle {
  readonly pitch: number;
  /** Height of the slow waves of the hand, as a share of a ripple. */
  readonly coarse: number;
  /** Rounding of crests and creases, as a share of the pitch. */
  readonly smooth: number;
  /** 0 irregular .. 1 like stacked coins. */
  readonly evenness: number;
  /** True where the hand paused so long that a crease stands out. */
  readonly isCreased: boolean;
}

/**
 * The ripples that one electrode's pool leaves, as tables over the travel of the pool (mm, one value every 0.02 mm from
 * `start`). Heights are in units of the ripple amplitude.
 */
export interface RippleTrain {
  readonly start: number;
  /** Ripple height, and the same train with some neighbours merged: mixed by a noise, crescents fork. */
  readonly height: Float32Array;
  readonly forked: Float32Array;
  /** Fine ripple that rides on the main one. */
  readonly fine: Float32Array;
  /** Dwell of the weaving electrode at either toe. */
  readonly dwellMinus: Float32Array;
  readonly dwellPlus: Float32Array;
  /** One random number per ripple each: reach of the toe, lightness. */
  readonly reach: Float32Array;
  readonly tint: Float32Array;
}

/** Draws the train of one electrode length, for a travel from `from` to `to` mm. */
export function drawRippleTrain(random: RandomStream, from: number, to: number, style: RippleStyle): RippleTrain {
  const size = Math.ceil((to - from) / STEP) + 4;
  const seed = random.seed();
  const irregular = irregularityOf(style.evenness);
  const drawn = drawRipples(random.child("ripples"), from, to, style.pitch, irregular, seed);
  const { ripples, creases } = pauseSometimes(random.child("pauses"), drawn, style.evenness, style.isCreased);
  const forked = mergeSome(random.child("forks"), ripples, irregular);
  const height = tableOf(ripples, size, from);
  const forkedHeight = tableOf(forked, size, from);
  addHandWaves([height, forkedHeight], from, style.coarse, seed);
  const round = Math.round((style.smooth * style.pitch) / STEP);
  const dwell = (name: string, late: number) =>
    smoothed(dwellTable(random.child(name), ripples, size, from, late), Math.round(0.12 / STEP));
  const steps = (value: (ripple: Ripple) => number, share: number) =>
    smoothed(stepTable(ripples, size, from, value), Math.round((share * style.pitch) / STEP));
  const main = smoothed(height, round);
  const mainForked = smoothed(forkedHeight, round);
  const tint = steps((ripple) => ripple.tint, 0.15);
  deepen([main, mainForked], tint, from, creases);
  return {
    start: from,
    height: main,
    forked: mainForked,
    fine: smoothed(fineTable(random.child("fine"), size, from, to, seed), 2),
    dwellMinus: dwell("dwell", 0),
    dwellPlus: dwell("dwell", 0.5),
    reach: steps((ripple) => ripple.reach, 0.35),
    tint,
  };
}

/** Place of a travel in a train's tables: whole part and remainder are used by `valueAt`. */
export function placeInTrain(train: RippleTrain, travel: number): number {
  return clamp((travel - train.start) / STEP, 0, train.height.length - 2);
}

/** Value of a table at a place from `placeInTrain`. */
export function valueAt(table: Float32Array, place: number): number {
  const i = place | 0;
  return table[i] + (place - i) * (table[i + 1] - table[i]);
}

function drawRipples(
  random: RandomStream,
  from: number,
  to: number,
  pitch: number,
  irregular: Irregularity,
  seed: number,
): Ripple[] {
  const ripples: Ripple[] = [];
  let drift = 0;
  let burst = 1;
  for (let u = from; u < to; ) {
    drift = drift * 0.93 + random.normal(0, irregular.drift);
    if (random.chance(irregular.jumps)) burst = random.uniform(0.65, 1.5);
    else burst += (1 - burst) * 0.12;
    const slow = 1 + irregular.slow * (0.22 * gradient1(u / 9, seed + 1) + 0.12 * gradient1(u / 3.1, seed + 2));
    const wanted = pitch * slow * burst * Math.exp(drift) * random.logNormal(1, irregular.length);
    const length = clamp(wanted, irregular.tightest * pitch, irregular.widest * pitch);
    const amplitude = drawAmplitude(random, length / pitch, irregular);
    ripples.push({
      from: u,
      length,
      amplitude,
      crest: random.uniform(0.42, 0.68),
      level: random.normal(0, irregular.level) * amplitude,
      tint: random.normal(0, 1),
      reach: random.normal(0, 1),
    });
    u += length;
  }
  return ripples;
}

/** Long ripples are high ones; some are nearly missing, few stand out. */
function drawAmplitude(random: RandomStream, relativeLength: number, irregular: Irregularity): number {
  const usual = relativeLength ** 0.8 * random.logNormal(1, irregular.height);
  const luck = random.uniform(0, 1);
  return Math.min(1.9, luck < irregular.missing ? 0.25 * usual : luck > 1 - irregular.strong ? 1.35 * usual : usual);
}

function mergeSome(random: RandomStream, ripples: readonly Ripple[], irregular: Irregularity): Ripple[] {
  const merged: Ripple[] = [];
  for (let n = 0; n < ripples.length; n++) {
    let { length, amplitude } = ripples[n];
    const { from, crest, level, tint, reach } = ripples[n];
    const next = ripples[n + 1];
    if (next && random.chance(irregular.merged)) {
      length += next.length;
      amplitude = 0.6 * (amplitude + next.amplitude);
      n++;
    }
    amplitude *= random.logNormal(1, 0.9 * irregular.height);
    merged.push({
      from,
      length,
      amplitude,
      crest,
      level: level + random.normal(0, 0.7 * irregular.level),
      tint,
      reach,
    });
  }
  return merged;
}

const FALLS = 1024;
const FALL = Float64Array.from({ length: FALLS + 2 }, (_, n) => (n / FALLS) ** 2.3);

/** A ripple's fall, 0 at its crest .. 1 at its crease, at a share of the way: `share ** 2.3` to a millionth, a power for every 0.02 mm of run takes long. */
function fallFromCrest(share: number): number {
  const place = share * FALLS;
  const n = place | 0;
  return FALL[n] + (place - n) * (FALL[n + 1] - FALL[n]);
}

/** Round crests, sharp creases, and a level of its own for every ripple. */
function tableOf(ripples: readonly Ripple[], size: number, start: number): Float32Array {
  const table = new Float32Array(size);
  for (let n = 0; n < ripples.length; n++) drawRipple(table, ripples[n], ripples[n + 1]?.level ?? 0, start);
  return table;
}

function drawRipple(table: Float32Array, ripple: Ripple, nextLevel: number, start: number): void {
  const last = indexOf(ripple.from + ripple.length, start, table.length);
  for (let i = indexOf(ripple.from, start, table.length); i <= last; i++) {
    const t = clamp((start + i * STEP - ripple.from) / ripple.length, 0, 1);
    const skewed = t < ripple.crest ? (0.5 * t) / ripple.crest : 0.5 + (0.5 * (t - ripple.crest)) / (1 - ripple.crest);
    const shape = 1 - fallFromCrest(Math.abs(2 * skewed - 1));
    table[i] = ripple.amplitude * (shape - 0.55) + mix(ripple.level, nextLevel, t * t * (3 - 2 * t));
  }
}

function stepTable(
  ripples: readonly Ripple[],
  size: number,
  start: number,
  value: (ripple: Ripple) => number,
): Float32Array {
  const table = new Float32Array(size);
  for (const ripple of ripples) {
    table.fill(value(ripple), indexOf(ripple.from, start, size), indexOf(ripple.from + ripple.length, start, size) + 1);
  }
  return table;
}

/** One lobe per two to four ripples; `late` shifts it by a share of a beat. */
function dwellTable(
  random: RandomStream,
  ripples: readonly Ripple[],
  size: number,
  start: number,
  late: number,
): Float32Array {
  const beats: number[] = [];
  for (let n = 0; n < ripples.length; n += 2 + random.integer(3)) beats.push(ripples[n].from);
  const table = new Float32Array(size);
  for (let n = 0; n + 2 < beats.length; n++) {
    const from = mix(beats[n], beats[n + 1], late);
    const to = mix(beats[n + 1], beats[n + 2], late);
    const strength = random.logNormal(1, 0.35);
    const last = indexOf(to, start, size);
    for (let i = indexOf(from, start, size); i < last; i++) {
      const t = clamp((start + i * STEP - from) / (to - from), 0, 1);
      table[i] = strength * (Math.sqrt(Math.max(0, 1 - (2 * t - 1) ** 2)) - 0.7);
    }
  }
  return table;
}

/** Fine ripples of about a third of a millimetre, in bursts. */
function fineTable(random: RandomStream, size: number, start: number, end: number, seed: number): Float32Array {
  const table = new Float32Array(size);
  for (let u = start; u < end; ) {
    const length = clamp(random.logNormal(0.34, 0.22), 0.2, 0.7);
    const strength = random.logNormal(1, 0.4) * clamp(0.6 + 0.9 * gradient1(u / 5, seed + 9), 0, 1.5);
    const last = indexOf(u + length, start, size);
    for (let i = indexOf(u, start, size); i <= last; i++) {
      const t = (start + i * STEP - u) / length;
      table[i] = strength * (0.5 - (2 * t - 1) ** 2);
    }
    u += length;
  }
  return table;
}

function addHandWaves(tables: readonly Float32Array[], start: number, coarse: number, seed: number): void {
  for (let i = 0; i < tables[0].length; i++) {
    const u = start + i * STEP;
    const wave = coarse * (0.9 * gradient1(u / 3.3, seed + 5) + gradient1(u / 7.1, seed + 6));
    for (const table of tables) table[i] += wave;
  }
}

/** Running mean over `reach` values to both sides. */
function smoothed(table: Float32Array, reach: number): Float32Array {
  if (reach < 1) return table;
  const last = table.length - 1;
  const out = new Float32Array(table.length);
  let sum = 0;
  for (let i = -reach; i <= reach; i++) sum += table[clamp(i, 0, last)];
  for (let i = 0; i <= last; i++) {
    out[i] = sum / (2 * reach + 1);
    sum += table[Math.min(last, i + reach + 1)] - table[Math.max(0, i - reach)];
  }
  return out;
}
