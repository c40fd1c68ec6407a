import { clamp, ease, hypot, mix } from "../../math";
import { forEachPixel, gradient1, gradient2 } from "../../surface";
import { type Field, mixColour, mixMaterial } from "../field";
import type { Region } from "../measure";
import { patchesOf } from "../plate/patches";
import type { FaceWork, Feature, FeatureBuilder } from "../work";
import { besideWeld, FARTHEST } from "./beside-weld";
import { measuredDepression } from "./measured-mark";
import { between, scaled, TONES } from "./tones";
import { drawTear, type Tear, type TornPlace, tornPlace } from "./torn-shape";

const CLEAR = 1;
/** Heat of the weld coloured the plate so far beyond the scar, mm. */
const TINTED = 5;

interface Torn extends TornPlace {
  readonly k: number;
  readonly x: number;
  readonly y: number;
  /** Ground off, 0..1, and the lightness of the disc's scratch. */
  readonly ground: number;
  readonly scratch: number;
}

/** How far a disc dressed a place: off one end of the scar, sliding out over the plate. */
function dressedAt({ dressed, width, length, seed }: Tear, x: number, y: number): { share: number; scratch: number } {
  if (!dressed) return { share: 0, scratch: 0 };
  const c = Math.cos(dressed.turn);
  const s = Math.sin(dressed.turn);
  const line = -x * s + y * c;
  const streak = gradient2((x * c + y * s) / 7, line / 0.32, seed + 31);
  const scratch = 0.6 * gradient1(line / 0.45, seed + 30) + 0.7 * streak;
  const along = ((2 * x) / length - dressed.from) * dressed.towards + 0.3 * gradient1(line / 1.5, seed + 32);
  const end = Math.abs((2 * x) / length) + 0.12 * scratch + 0.35 * (line / width) ** 2;
  const side = Math.abs(y / width) + 0.14 * gradient1(x / 4, seed + 33) + 0.07 * scratch;
  return { share: ease(0, 0.4, along + 0.12 * scratch) * ease(1.12, 0.8, end) * ease(0.62, 0.34, side), scratch };
}

/** Calls `visit` with the place about the scar's middle of every pixel within `beyond` mm of it that is not weld. */
function forEachPlace(
  field: Field,
  { tear, x: x0, y: y0 }: Placed,
  beyond: number,
  visit: (k: number, x: number, y: number) => void,
): void {
  const c = Math.cos(tear.turn);
  const s = Math.sin(tear.turn);
  const box = scarBox(tear, x0, y0);
  const wide = { x0: box.x0 - beyond, x1: box.x1 + beyond, y0: box.y0 - beyond, y1: box.y1 + beyond };
  forEachPixel(field.grid, wide, (k, px, py) => {
    if (field.bead[k] <= 0.3) visit(k, (px - x0) * c + (py - y0) * s, (py - y0) * c - (px - x0) * s);
  });
}

interface Placed {
  readonly tear: Tear;
  readonly x: number;
  readonly y: number;
}

/** Tears the piece off: plate pulled out in fibres, a lip beside it, what stayed of its welds standing, a part of them dressed. */
function tearOut(field: Field, placed: Placed): Torn[] {
  const { z, parent } = field;
  const { tear } = placed;
  const found: Torn[] = [];
  let deepest = 1e-3;
  forEachPlace(field, placed, 0, (k, x, y) => {
    const place = tornPlace(tear, x, y);
    const { share, scratch } = dressedAt(tear, x, y);
    if (place.scar <= 0 && place.lump <= 0 && share <= 0) return;
    deepest = Math.max(deepest, place.low);
    found.push({ ...place, k, x, y, ground: share, scratch });
  });
  const scale = tear.depth / deepest;
  return found.map((place) => {
    const { k, low, lip, high, scar, lump, fracture, fibre, ground, scratch } = place;
    const before = z[k];
    const down = scale * low;
    const skin = 0.03 * fibre * fracture * ease(0.95, 0.6, down / tear.depth);
    const shape = scale * Math.min(lip, 0.3) - down + high + skin;
    const covers = Math.max(scar, lump);
    const after = before + (parent[k] + shape - before) * covers;
    const flat = parent[k] + 0.03 + 0.012 * scratch;
    const touched = ground * ease(-0.06, 0.01, after - parent[k]);
    z[k] = after + (Math.min(after, flat) - after) * touched;
    field.clean[k] = Math.max(field.clean[k], covers);
    return { ...place, ground: touched };
  });
}

const scarBox = (tear: Tear, x: number, y: number): Region => {
  const high = tear.width * 0.75 + (tear.length / 2) * Math.abs(Math.sin(tear.turn)) + 1;
  const reach = tear.length * 0.58 + 2;
  return { x0: x - reach, x1: x + reach, y0: y - high, y1: y + high };
};

/**
 * Colours that the heat of its welds left round the scar: burnt grey close to it, then blue, brown and straw, in patches and
 * rubbed off again; scale is dulled and reddened.
 */
function paintTint(work: FaceWork, placed: Placed): void {
  const { length, width, seed, tint } = placed.tear;
  for (const field of patchesOf(work)) {
    forEachPlace(field, placed, TINTED, (k, x, y) => {
      const out = hypot(Math.max(0, Math.abs(x) - 0.42 * length), Math.max(0, Math.abs(y) - 0.36 * width));
      if (out > TINTED + 2.2) return;
      const patch = gradient2(x / 4.5, y / 3.5, seed + 35);
      const d = out + 1.7 * patch + 0.4 * gradient2(x / 1.1, y / 1.1, seed + 36);
      if (d > TINTED) return;
      const bare = tint * (1 - field.bead[k]) * clamp(0.62 + 1.3 * gradient2(x / 8, y / 6, seed + 37), 0.1, 1);
      // mill scale hides some of what colours the steel below it
      const shown = bare * mix(0.55, 1, field.band[k]);
      mixColour(field, k, TONES.straw, 0.34 * shown * ease(1.4, 3, d) * ease(TINTED, 3.2, d));
      mixMaterial(field, k, TONES.brown, 0.52, 0.25, 0.5 * bare * ease(0.9, 1.9, d) * ease(3.4, 2.2, d));
      mixMaterial(field, k, TONES.blue, 0.46, 0.4, 0.5 * shown * ease(0, 0.8, d) * ease(2.2, 1.1, d));
      mixMaterial(field, k, TONES.oxide, 0.6, 0.2, 0.6 * bare * ease(1.3, -0.2, d));
    });
  }
}

/** Dull fibrous fracture, dull skin of what is left of the weld, fresh scratches. */
function paintTear({ strip }: FaceWork, tear: Tear, torn: readonly Torn[]): void {
  for (const { k, x, y, scar, lump, fracture, fibre, lip, ground, scratch } of torn) {
    const patch = gradient2(x / 3.6, y / 3, tear.seed + 11);
    const covers = Math.max(scar, lump);
    strip.brush[k] *= 1 - covers;
    const skin = between(TONES.skin, TONES.meltedMetal, clamp(0.3 + 0.5 * patch, 0, 0.8));
    mixMaterial(strip, k, skin, 0.48, 0.5, 0.75 * lump);
    const light = clamp(0.66 + 0.24 * fibre + 0.2 * patch, 0.36, 0.95);
    mixMaterial(strip, k, scaled(TONES.meltedMetal, light), 0.6, 0.55, 0.8 * fracture * covers);
    mixMaterial(strip, k, TONES.cutMetal, 0.4, 0.75, 0.3 * ease(0.05, 0.18, lip));
    mixColour(strip, k, TONES.rust, 0.2 * ease(0.15, 0.6, -patch) * fracture * covers);
    if (ground <= 0) continue;
    mixMaterial(strip, k, scaled(TONES.cutMetal, 0.74 + 0.14 * scratch), 0.36, 0.8, 0.62 * ground);
    strip.brush[k] += (0.7 - strip.brush[k]) * ground;
    if (ground > 0.4) strip.brushAngle[k] = tear.turn + (tear.dressed?.turn ?? 0);
  }
}

/**
 * Scar where an attachment was knocked off the plate, from `x` over `length` mm (10 to 46), torn out `severity` mm deep at its
 * deepest (0.24 to 1.7); two strips of its welds stand or are torn out beside it, at times dressed in part. Truth: size = greatest depth below the
 * plane of the plate round it; extent = where it lies 0.08 mm or more below.
 */
export const tornSurface: FeatureBuilder = (request, random): Feature => {
  let placed: Placed | null = null;
  let torn: readonly Torn[] = [];
  return {
    id: request.id,
    cut(work) {
      const x = request.x + Math.max(8, request.length) / 2;
      const toe = Math.abs(besideWeld(work, { ...request, y: undefined }, x, 0, 0)) - 2.5;
      const tear = drawTear(random.child("tear"), request, FARTHEST - toe - CLEAR);
      placed = { tear, x, y: besideWeld(work, request, x, tear.width / 2, CLEAR) };
      torn = tearOut(work.strip, placed);
    },
    paint(work) {
      if (!placed) return;
      paintTint(work, placed);
      paintTear(work, placed.tear, torn);
    },
    measure: (work) =>
      placed && measuredDepression(work, request.id, "torn-surface", scarBox(placed.tear, placed.x, placed.y)),
  };
};
