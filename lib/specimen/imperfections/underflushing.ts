import { clamp, ease, hypot } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient1, gradient2 } from "../../surface";
import { mixMaterial } from "../field";
import type { Region } from "../measure";
import { toeAt } from "../runs/edit";
import type { FaceWork, Feature, FeatureBuilder, FeatureRequest } from "../work";
import { besideWeld, FARTHEST } from "./beside-weld";
import { measuredDepression } from "./measured-mark";
import { type Plane, plateAround } from "./plate-plane";
import { scaled, TONES } from "./tones";

/** One leaning of the flap disc, about the middle of the hollow; shares of its half length and half width. */
interface Lean {
  readonly u: number;
  readonly v: number;
  readonly wide: number;
  readonly high: number;
  readonly deep: number;
}

interface Hollow {
  readonly length: number;
  readonly width: number;
  readonly turn: number;
  readonly leans: readonly Lean[];
  /** Radius of the scratches and the angle at which the disc stood. */
  readonly radius: number;
  readonly stood: number;
  readonly polish: number;
  readonly seed: number;
}

const WIDTH = { least: 8, most: 18 };
const CLEAR = 0.6;
/** How steeply the ground flank of the weld rises from the hollow, and how far inside the toe it is dressed, mm. */
const FLANK = { slope: 0.42, inside: 4 };

function drawHollow(random: RandomStream, request: FeatureRequest, room: number): Hollow {
  const length = Math.max(14, request.length);
  const width = Math.min(room, clamp(length * random.uniform(0.3, 0.5), WIDTH.least, WIDTH.most));
  const count = 3 + random.integer(3);
  const leans = Array.from({ length: count }, (_, n) => ({
    u: n === 0 ? random.uniform(-0.25, 0.25) : random.uniform(-0.5, 0.5),
    v: random.uniform(-0.16, 0.16),
    wide: n === 0 ? random.uniform(0.62, 0.8) : random.uniform(0.38, 0.6),
    high: random.uniform(0.66, 0.84),
    deep: n === 0 ? 1 : random.uniform(0.35, 0.9),
  }));
  return {
    length,
    width,
    turn: random.normal(0, 0.05),
    leans,
    radius: random.uniform(50, 64),
    stood: random.uniform(0.5, 1.1) * random.pick([-1, 1]) + Math.PI / 2,
    polish: random.uniform(0, 1),
    seed: random.seed(),
  };
}

/** How deep the disc went at a place, as a share of the deepest: broad bowls run into one another. */
function bowl({ leans, seed }: Hollow, u: number, v: number, x: number, y: number): number {
  const bentU = u + 0.14 * gradient2(x / 9, y / 5, seed) + 0.07 * gradient2(x / 3.5, y / 3, seed + 10);
  const bentV = v + 0.22 * gradient2(x / 7, y / 6, seed + 1) + 0.1 * gradient2(x / 3, y / 3, seed + 11);
  let sum = 0;
  for (const { u: atU, v: atV, wide, high, deep } of leans) {
    const d2 = ((bentU - atU) / wide) ** 2 + ((bentV - atV) / high) ** 2;
    // a smooth largest: where two leanings meet no ridge is left
    if (d2 < 1) sum += (deep * (1 - d2) ** 2) ** 4;
  }
  return sum ** 0.25;
}

interface Ground {
  readonly k: number;
  readonly share: number;
  readonly scratch: number;
  readonly angle: number;
}

/** Grinds the hollow; over the weld's flank only what stands above the hollow's own rise is taken. */
function grindHollow(work: FaceWork, hollow: Hollow, depth: number, x0: number, y0: number, plate: Plane): Ground[] {
  const { strip } = work;
  const { seed, radius, stood } = hollow;
  const side = y0 < 0 ? -1 : 1;
  const c = Math.cos(hollow.turn);
  const s = Math.sin(hollow.turn);
  const arcX = x0 - radius * Math.cos(stood);
  const arcY = y0 - radius * Math.sin(stood);
  const found: { k: number; x: number; y: number; cup: number; inside: number }[] = [];
  let most = 0;
  forEachPixel(strip.grid, hollowBox(hollow, x0, y0), (k, x, y) => {
    const u = ((x - x0) * c + (y - y0) * s) / (hollow.length / 2);
    const v = (-(x - x0) * s + (y - y0) * c) / (hollow.width / 2);
    const cup = bowl(hollow, u, v, x, y);
    if (cup <= 0.003) return;
    const inside = strip.bead[k] > 0.02 ? Math.max(0, (toeAt(work, side, x, 0.4) - y) * side) : 0;
    if (inside > FLANK.inside) return;
    if (inside === 0) most = Math.max(most, cup);
    found.push({ k, x, y, cup, inside });
  });
  const scale = most > 0 ? 1 / most : 0;
  return found.map(({ k, x, y, cup, inside }) => {
    const r = hypot(x - arcX, y - arcY);
    const wander = gradient2(x / 14, r / 0.5, seed + 4);
    const scratch = 0.6 * gradient1(r / 0.4, seed + 2) + 0.5 * gradient1(r / 1.1, seed + 3) + 0.7 * wander;
    const rise = FLANK.slope * inside + 0.05 * inside * inside;
    // where the disc hardly touches it follows the plate as it lies, in the depth it cuts its own bed
    const level = plate(x, y);
    const own = (strip.parent[k] - level) * ease(0.75, 0.1, scale * cup);
    const wanted = level + own - depth * scale * cup + rise;
    const above = strip.z[k] - wanted;
    const press = cup * scale * depth;
    // the disc lifts off gradually: single scratches reach out further than others, the last ones hardly touch
    const reach =
      press +
      0.03 * scratch +
      0.06 * gradient2(x / 5, y / 3.4, seed + 5) +
      0.03 * gradient2(x / 1.6, y / 1.3, seed + 6);
    const touched =
      ease(0, 0.17, reach) * (inside > 0 ? ease(0, 0.2, above) * ease(FLANK.inside, 0.5 * FLANK.inside, inside) : 1);
    if (inside > 0) strip.z[k] -= Math.max(0, above) * touched;
    else strip.z[k] += (wanted - strip.z[k]) * touched;
    strip.z[k] += 0.014 * scratch * touched;
    strip.clean[k] = Math.max(strip.clean[k], touched);
    // it shines as far as the disc brushed over it, farther than it cut
    const brushed = inside > 0 ? touched : ease(-0.05, 0.12, reach) * ease(0, 0.03, press);
    return { k, share: Math.max(touched, brushed), scratch, angle: Math.atan2(y - arcY, x - arcX) + Math.PI / 2 };
  });
}

const hollowBox = (hollow: Hollow, x: number, y: number): Region => {
  const high = hollow.width / 2 + 0.3;
  return { x0: x - hollow.length * 0.56, x1: x + hollow.length * 0.56, y0: y - high, y1: y + high };
};

/**
 * A broad hollow ground below the plate's surface from `x` over `length` mm (20 to 52), `severity` mm deep at its deepest
 * (0.24 to 1). Variant "plate" (default): beside the weld; "toe": the toe dressed with it, so that the weld's flank runs
 * down below the plate. Truth: size = greatest depth below the plane of the plate round it, weld metal left out; extent =
 * where it lies 0.08 mm or more below.
 */
export const underflushing: FeatureBuilder = (request, random): Feature => {
  let hollow: Hollow | null = null;
  let ground: readonly Ground[] = [];
  let box: Region | null = null;
  return {
    id: request.id,
    cut(work) {
      const depth = request.severity > 0 ? request.severity : 0.5;
      const x = request.x + Math.max(14, request.length) / 2;
      const toe = Math.abs(toeAt(work, request.side, x, 3));
      hollow = drawHollow(random.child("hollow"), request, FARTHEST - toe - CLEAR);
      const half = hollow.width / 2;
      const isAtToe = request.variant === "toe";
      const y = isAtToe ? request.side * (toe + 0.55 * half) : besideWeld(work, request, x, half, CLEAR);
      box = hollowBox(hollow, x, y);
      ground = grindHollow(work, hollow, depth, x, y, plateAround(work.strip, box));
    },
    paint({ strip }) {
      if (!hollow) return;
      const { seed, polish } = hollow;
      const { columns, perMm } = strip.grid;
      for (const { k, share, scratch, angle } of ground) {
        const x = (k % columns) / perMm;
        const y = Math.floor(k / columns) / perMm;
        const patch = gradient2(x / 11, y / 5, seed + 7);
        const light = 0.74 + 0.12 * polish + 0.2 * scratch + 0.12 * patch;
        mixMaterial(
          strip,
          k,
          scaled(TONES.cutMetal, light),
          0.4 - 0.08 * polish + 0.04 * patch,
          0.8,
          0.74 * share * (0.65 + 0.35 * polish) * clamp(0.85 + 0.5 * patch, 0.5, 1),
        );
        const warm = ease(0.2, 0.6, gradient1(x / 13, seed + 8) + 0.4 * patch);
        mixMaterial(strip, k, TONES.straw, 0.4, 0.7, 0.13 * warm * share);
        strip.brush[k] += (0.75 - strip.brush[k]) * share;
        if (share > 0.4) strip.brushAngle[k] = angle;
      }
    },
    measure: (work) => (box ? measuredDepression(work, request.id, "underflushing", box) : null),
  };
};
