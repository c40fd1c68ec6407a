import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient2, value1 } from "../../surface";
import { mixColour, mixMaterial } from "../field";
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
  /** Centre of its scratches. */
  readonly arcX: number;
  readonly arcY: number;
}

/** Share of the weld's height that the lowest facet leaves at the very end, and how far in it reaches, mm. */
const GROUND: { readonly left: Range; readonly reach: Range } = { left: [0.1, 0.55], reach: [2.5, 9] };
/** mm from the end within which weld may be ground, and plate beside it scratched. */
const REACH = { weld: 12, plate: 5 };

function drawFacets(end: number, crown: number, random: RandomStream): Facet[] {
  return Array.from({ length: 2 + random.integer(2) }, (_, n) => {
    const lean = random.uniform(-1, 1);
    const left = crown * random.uniform(...GROUND.left) + 0.12;
    return {
      left: left * (1 + 0.35 * n),
      slope: Math.max(0.06, crown - left) / random.uniform(...GROUND.reach),
      tilt: 0.06 * lean,
      tone: random.uniform(0.36, 0.7),
      arcX: end + random.uniform(-26, 26),
      arcY: random.pick([-1, 1]) * random.uniform(46, 60),
    };
  });
}

/** The tab was cut off and the cut gone over with a grinder: flat facets at slightly different angles, some plate scratched along. */
export function grindEnd(work: FaceWork, end: number, random: RandomStream): void {
  const { strip } = work;
  // misaligned plates: the disc lies across both
  const levelAt = levelBetweenPlates(work);
  const facets = drawFacets(end, crownAt(work, end, levelAt), random);
  const dull = random.uniform(0.1, 0.75);
  const beside = random.uniform(1, REACH.plate);
  const aside = work.plan.groove + random.uniform(1, 7);
  const seed = random.seed();
  forEachPixel(strip.grid, { x0: end - REACH.weld, x1: end + REACH.weld, y0: -24, y1: 24 }, (k, x, y, i) => {
    const away = Math.abs(x - end);
    if (strip.bead[k] <= 0.02) {
      scratchBeside(work, k, away, Math.abs(y), { x, y, beside, aside, facet: facets[0], seed });
      return;
    }
    let ramp = Number.POSITIVE_INFINITY;
    let lowest = facets[0];
    for (const facet of facets) {
      const at = facet.left + facet.slope * away + facet.tilt * y * Math.sign(y + 4 * facet.tilt);
      if (at >= ramp) continue;
      ramp = at;
      lowest = facet;
    }
    const r = Math.sqrt((x - lowest.arcX) ** 2 + (y - lowest.arcY) ** 2);
    const scratch = value1(r / 0.36, seed + 2) + 0.6 * value1(r / 0.95, seed + 3);
    ramp += 0.12 * gradient2(x / 4.4, y / 3.6, seed + 7) + 0.11 * value1(r / 1.3, seed + 6) + 0.05 * scratch;
    const above = strip.z[k] - levelAt(i, y) - ramp;
    if (above <= 0) return;
    // hollows between ripples and runs are only just touched
    const share = ease(-0.02, 0.3, above - 0.08 * scratch);
    strip.z[k] -= (above - 0.012 * scratch) * ease(0, 0.1, above);
    const smoky = clamp(dull + 0.6 * gradient2(x / 3.5, y / 3, seed + 5), 0, 1);
    mixMaterial(
      strip,
      k,
      scaled(TONES.groundSteel, lowest.tone + 0.16 * scratch),
      0.56 + 0.05 * scratch,
      0.45,
      0.78 * share,
    );
    mixMaterial(strip, k, TONES.smoke, 0.66, 0.28, 0.42 * smoky * share);
    mixColour(strip, k, TONES.rust, 0.12 * ease(0.4, 0.9, smoky) * share);
    strip.brush[k] += (0.45 - strip.brush[k]) * share;
    strip.brushAngle[k] = Math.atan2(y - lowest.arcY, x - lowest.arcX) + Math.PI / 2;
  });
}

interface Beside {
  readonly x: number;
  readonly y: number;
  readonly beside: number;
  readonly aside: number;
  readonly facet: Facet;
  readonly seed: number;
}

/** The disc ran out over the corner of the plates. */
function scratchBeside(
  { strip }: FaceWork,
  k: number,
  away: number,
  across: number,
  { x, y, beside, aside, facet, seed }: Beside,
): void {
  // no wander of the disc reaches further along or across
  if (away > 2 * beside || across > aside + 2) return;
  const r = Math.sqrt((x - facet.arcX) ** 2 + (y - facet.arcY) ** 2);
  const scratch = value1(r / 0.4, seed + 8) + 0.5 * value1(r / 1.1, seed + 9);
  const out = away / beside + 0.4 * value1(r / 0.5, seed + 10) + 0.3 * gradient2(x / 3, y / 4, seed + 11);
  const share = ease(1, 0.45, out) * ease(aside, aside - 3, across + scratch);
  if (share <= 0) return;
  strip.z[k] += 0.006 * scratch * share;
  mixMaterial(strip, k, scaled(TONES.groundSteel, 0.7 + 0.1 * scratch), 0.5, 0.62, 0.75 * share);
}
