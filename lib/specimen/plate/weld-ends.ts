import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient1, gradient2, hash01, value1 } from "../../surface";
import type { Face } from "../../weld";
import { mixColour, mixMaterial } from "../field";
import { scaled } from "../imperfections/tones";
import type { Range } from "../runs";
import { levelBetweenPlates } from "../runs/groove";
import type { FaceWork } from "../work";
import { PLATE_TONES as TONES } from "./tones";

/**
 * How a weld ends at the plate's edge: as the electrode left it, with a run-on or run-off tab cut off and ground, or with
 * the tab broken off.
 */
const ENDS = ["plain", "plain", "plain", "ground", "ground", "ground", "broken", "broken"] as const;

/** Ends of the weld, each in one of three ways; ground ones are dull, so that they do not flash in a light along the weld. */
export function finishWeldEnds(work: FaceWork, random: RandomStream): void {
  for (const end of [0, work.joint.length]) {
    const own = random.child(end === 0 ? "datum" : "far");
    const kind = own.pick(ENDS);
    if (kind === "ground") grindEnd(work, end, own);
    if (kind === "broken") breakEnd(work, end, own);
  }
}

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

/** Height that the lowest facet and a fracture leave at the very end, mm. */
const LEFT: Readonly<Record<Face, Range>> = { cap: [0.45, 1.3], root: [0.15, 0.5] };
const TORN: Readonly<Record<Face, Range>> = { cap: [-0.3, 0.8], root: [-0.2, 0.35] };
/** mm from the end within which weld may be ground, and plate beside it scratched. */
const REACH = { weld: 12, plate: 5 };

function drawFacets(end: number, { face }: FaceWork, random: RandomStream): Facet[] {
  return Array.from({ length: 2 + random.integer(2) }, (_, n) => {
    const lean = random.uniform(-1, 1);
    const leftOver = random.uniform(...LEFT[face]);
    return {
      left: leftOver * (1 + 0.5 * n),
      slope: random.uniform(0.5, 1.25),
      tilt: 0.08 * lean,
      tone: random.uniform(0.36, 0.7),
      arcX: end + random.uniform(-26, 26),
      arcY: random.pick([-1, 1]) * random.uniform(46, 60),
    };
  });
}

/** The tab was cut off and the cut gone over with a grinder: flat facets at slightly different angles, some plate scratched along. */
function grindEnd(work: FaceWork, end: number, random: RandomStream): void {
  const { strip } = work;
  // misaligned plates: the disc lies across both
  const levelAt = levelBetweenPlates(work);
  const facets = drawFacets(end, work, random);
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

/** The tab was bent off: a ragged grey fracture, lower than the weld, with a bright lip where it let go last. */
function breakEnd(work: FaceWork, end: number, random: RandomStream): void {
  const { strip, face } = work;
  const levelAt = levelBetweenPlates(work);
  const inset = random.uniform(0.5, 2.4);
  const lowest = random.uniform(...TORN[face]);
  const lean = random.normal(0, 0.05);
  const old = random.uniform(0, 0.8);
  const seed = random.seed();
  const inward = end === 0 ? 1 : -1;
  forEachPixel(strip.grid, { x0: end - 6, x1: end + 6, y0: -24, y1: 24 }, (k, x, y, i) => {
    if (strip.bead[k] <= 0.02) return;
    const line =
      inset + 0.7 * gradient1(y / 5.2, seed) + 0.4 * gradient1(y / 1.7, seed + 1) + 0.16 * gradient1(y / 0.5, seed + 2);
    const past = line - (x - end) * inward;
    if (past < -0.3) return;
    const torn = gradient2(x / 0.9, y / 1.6, seed + 3) + 0.6 * gradient2(x / 0.4, y / 0.45, seed + 4);
    const floor = levelAt(i, y) + lowest + lean * y + 0.22 * torn + 0.3 * gradient2(x / 3, y / 4, seed + 5);
    const above = strip.z[k] - floor;
    const fallen = ease(-0.05, 0.75, past) * (above > 0 ? 1 : 0.3);
    if (above > 0) strip.z[k] -= above * fallen;
    const lip = Math.exp(-(((past + 0.05) / 0.18) ** 2));
    strip.z[k] += 0.05 * lip * clamp(torn + 0.5, 0, 1);
    const grain = hash01(Math.floor(x / 0.35), Math.floor(y / 0.35), seed + 6);
    const light = clamp(0.42 + 0.2 * torn + 0.2 * (grain - 0.5), 0.15, 0.8);
    const share = ease(-0.1, 0.25, past);
    mixMaterial(strip, k, scaled(TONES.groundSteel, light), 0.56 + 0.14 * grain, 0.5, 0.88 * share);
    mixMaterial(strip, k, TONES.rust, 0.8, 0.1, 0.3 * old * clamp(0.5 + torn, 0, 1) * share);
    strip.brush[k] *= 1 - share;
  });
}
