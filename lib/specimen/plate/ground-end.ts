import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient1, gradient2, value1 } from "../../surface";
import { type Field, mixColour, mixLit, mixMaterial } from "../field";
import { scaled } from "../imperfections/tones";
import type { Range } from "../runs";
import { levelBetweenPlates } from "../runs/groove";
import type { FaceWork } from "../work";
import { crownAt } from "./crown-at";
import { PLATE_TONES as TONES } from "./tones";

/** One leaning of the grinder over the cut: a plane, mm. */
interface Facet {
  readonly left: number;
  readonly slope: number;
  readonly tilt: number;
  readonly tone: number;
  /** Centre of its strokes. */
  readonly arcX: number;
  readonly arcY: number;
}

/** Share of the weld's height that the lowest facet leaves at the very end, and how far in it reaches, mm. */
const GROUND: { readonly left: Range; readonly reach: Range } = { left: [0.25, 0.6], reach: [3, 6] };
/** mm from the end within which weld may be ground, and plate beside it scratched. */
const REACH = { weld: 12, plate: 5 };
/** Height over which the disc took off less and less before it lost the weld, mm. */
const FEATHERED = 0.34;
/** Share of what stands out that is taken: the disc gives, and ripples are still to be made out under its strokes. */
const TAKES = 0.68;
/** Single scratches are found this far below what was ground, mm. */
const STRAY = 0.7;
/** The disc's waves and wander raise or lower what it takes by about this at most, mm. */
const UNEVEN = 0.5;
/** Where strokes end, the crests beside them are still touched over this share of the reach. */
const OUT = 1.25;

function drawFacets(end: number, reach: number, crown: number, random: RandomStream): Facet[] {
  return Array.from({ length: 2 + random.integer(2) }, (_, n) => {
    const lean = random.uniform(-1, 1);
    const left = crown * random.uniform(...GROUND.left) + 0.12;
    return {
      left: left * (1 + 0.2 * n),
      slope: Math.max(0.05, crown - left) / (reach * random.uniform(0.8, 1.1)),
      tilt: 0.03 * lean,
      tone: random.uniform(0.5, 0.64),
      arcX: end + random.uniform(-40, 40),
      arcY: random.pick([-1, 1]) * random.uniform(46, 60),
    };
  });
}

/** The tab was cut off and the cut gone over with a grinder: fine strokes that run out unevenly over the weld, some plate scratched along. */
export function grindEnd(work: FaceWork, end: number, random: RandomStream): void {
  const { strip } = work;
  // misaligned plates: the disc lies across both
  const levelAt = levelBetweenPlates(work);
  const reach = random.uniform(...GROUND.reach);
  const facets = drawFacets(end, reach, crownAt(work, end, levelAt), random);
  const dull = random.uniform(0.1, 0.75);
  const beside = random.uniform(1, REACH.plate);
  const aside = work.plan.groove + random.uniform(1, 7);
  const seed = random.seed();
  const grinding: Grinding = { end, reach, facets, dull, beside, aside, levelAt, seed };
  forEachPixel(strip.grid, { x0: end - REACH.weld, x1: end + REACH.weld, y0: -24, y1: 24 }, (k, x, y, i) => {
    if (strip.bead[k] > 0.02) grindPixel(strip, grinding, k, x, y, i);
    else scratchBeside(strip, grinding, k, x, y);
  });
}

/** How one end was gone over; lengths in mm. */
interface Grinding {
  readonly end: number;
  readonly reach: number;
  readonly facets: readonly Facet[];
  /** 0 bright .. 1 smoked over. */
  readonly dull: number;
  /** How far the disc ran out over the plates, along and across. */
  readonly beside: number;
  readonly aside: number;
  readonly levelAt: (i: number, y: number) => number;
  readonly seed: number;
}

function grindPixel(strip: Field, grinding: Grinding, k: number, x: number, y: number, i: number): void {
  const { end, reach, facets, dull, levelAt, seed } = grinding;
  const away = Math.abs(x - end);
  let first = facets[0];
  let lowest = Number.POSITIVE_INFINITY;
  for (let n = 0; n < facets.length; n++) {
    const { left, slope, tilt } = facets[n];
    const at = left + slope * away + tilt * y;
    if (at >= lowest) continue;
    lowest = at;
    first = facets[n];
  }
  const over = strip.z[k] - levelAt(i, y);
  // most of the weld lies lower than anything is ground: told before any noise is asked
  if (over - lowest <= -STRAY - UNEVEN) return;
  const r = Math.sqrt((x - first.arcX) ** 2 + (y - first.arcY) ** 2);
  const wander = gradient2(x / 2.6, y / 4.2, seed + 7);
  // single strokes went further in than others
  const strokes = 0.34 * gradient1(r / 1.7, seed + 6) + 0.3 * value1(r / 0.5, seed + 13);
  const out = away / (reach * OUT) + 0.6 * strokes + 0.26 * wander;
  const run = ease(1.1, 0.3, out);
  if (run <= 0) return;
  // leanings of the disc run into one another: no edge stands between them
  let ramp = 0;
  let weight = 0;
  for (let n = 0; n < facets.length; n++) {
    const { left, slope, tilt } = facets[n];
    const at = left + slope * away + tilt * y + 0.12 * gradient2(x / 4, y / 3.3, seed + 20 + n);
    const square = at > 0 ? at * at : 0;
    const counts = 1 / (0.02 + square * square);
    ramp += counts * at;
    weight += counts;
  }
  ramp /= weight;
  const above = over - ramp + 0.24 * wander + 0.14 * gradient2(x / 0.9, y / 1.3, seed + 14);
  if (above <= -STRAY) return;
  // no grit cuts all the way: a line fades in and out along its stroke
  const cuts = clamp(0.6 + 0.8 * gradient2(x / 3.2, y / 1.1, seed + 12), 0, 1.3);
  const scratch = cuts * (0.8 * value1(r / 0.19, seed + 2) + 0.6 * value1(r / 0.42, seed + 3));
  // what stands out is taken off gradually: hollows between ripples and runs are only just touched
  const taken = above > FEATHERED ? above : Math.max(0, above + FEATHERED) ** 2 / (4 * FEATHERED);
  const ground = ease(-0.75 * FEATHERED, 0.9 * FEATHERED, above + 0.2 * scratch + 0.16 * strokes);
  // single scratches run out down the flanks
  const stray = ease(-STRAY, 0, above) * ease(0.15, 0.8, scratch + strokes);
  const share = run * Math.max(ground, 0.75 * stray);
  strip.z[k] -= TAKES * taken * run - 0.011 * scratch * share;
  const smoky = clamp(dull + 0.6 * gradient2(x / 3.5, y / 3, seed + 5), 0, 1);
  const light = first.tone + 0.06 + 0.22 * scratch + 0.1 * gradient2(x / 1.9, y / 1.9, seed + 15);
  mixLit(strip, k, TONES.groundSteel, light, 0.52 - 0.06 * scratch, 0.5, clamp(0.5 + 0.25 * scratch, 0.2, 0.8) * share);
  mixMaterial(strip, k, TONES.smoke, 0.62, 0.34, 0.3 * smoky * share);
  mixColour(strip, k, TONES.rust, 0.08 * ease(0.4, 0.9, smoky) * share);
  strip.brush[k] += (0.6 - strip.brush[k]) * share;
  if (share > 0.4) strip.brushAngle[k] = Math.atan2(y - first.arcY, x - first.arcX) + Math.PI / 2;
}

/** The disc ran out over the corner of the plates. */
function scratchBeside(strip: Field, grinding: Grinding, k: number, x: number, y: number): void {
  const { end, beside, aside, seed } = grinding;
  const away = Math.abs(x - end);
  const across = Math.abs(y);
  // no wander of the disc reaches further along or across
  if (away > 2 * beside || across > aside + 2) return;
  const [facet] = grinding.facets;
  const r = Math.sqrt((x - facet.arcX) ** 2 + (y - facet.arcY) ** 2);
  const scratch = value1(r / 0.4, seed + 8) + 0.5 * value1(r / 1.1, seed + 9);
  const out = away / beside + 0.4 * value1(r / 0.5, seed + 10) + 0.3 * gradient2(x / 3, y / 4, seed + 11);
  const share = ease(1, 0.45, out) * ease(aside, aside - 3, across + scratch);
  if (share <= 0) return;
  strip.z[k] += 0.006 * scratch * share;
  mixMaterial(strip, k, scaled(TONES.groundSteel, 0.7 + 0.1 * scratch), 0.5, 0.62, 0.75 * share);
}
