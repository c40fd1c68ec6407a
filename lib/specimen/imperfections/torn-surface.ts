import { clamp, ease, mix } from "../../math";
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
/** Heat of the fillets coloured the plate so far beyond the scar, mm. */
const TINTED = 4.5;

interface Torn extends TornPlace {
  readonly k: number;
  readonly x: number;
  readonly y: number;
  readonly down: number;
  /** Ground off, 0..1, and the lightness of the disc's scratch. */
  readonly ground: number;
  readonly scratch: number;
}

/** How far a disc dressed a place: off the fillet's ends, sliding out over the plate. */
function dressedAt({ dressed, width, length, seed }: Tear, x: number, y: number): { share: number; scratch: number } {
  if (!dressed) return { share: 0, scratch: 0 };
  const c = Math.cos(dressed.turn);
  const s = Math.sin(dressed.turn);
  const line = -x * s + y * c;
  const streak = gradient2((x * c + y * s) / 7, line / 0.32, seed + 31);
  const scratch = 0.6 * gradient1(line / 0.45, seed + 30) + 0.7 * streak;
  const along = ((2 * x) / length - dressed.from) * dressed.towards + 0.12 * gradient1(line / 1.5, seed + 32);
  const end = Math.abs((2 * x) / length) + 0.12 * scratch + 0.35 * (line / width) ** 2;
  const side = Math.abs(y / width) + 0.08 * gradient1(x / 5, seed + 33) + 0.04 * scratch;
  return { share: ease(0, 0.3, along + 0.12 * scratch) * ease(1.12, 0.86, end) * ease(0.6, 0.4, side), scratch };
}

/** Tears the piece off: plate pulled out in fibres on one side, the beads' remains standing, a part of them dressed. */
function tearOut(field: Field, tear: Tear, x0: number, y0: number): Torn[] {
  const { z, parent } = field;
  const { depth } = tear;
  const c = Math.cos(tear.turn);
  const s = Math.sin(tear.turn);
  const found: Omit<Torn, "down">[] = [];
  let deepest = 0;
  forEachPixel(field.grid, scarBox(tear, x0, y0), (k, px, py) => {
    if (field.bead[k] > 0.3) return;
    const x = (px - x0) * c + (py - y0) * s;
    const y = -(px - x0) * s + (py - y0) * c;
    const place = tornPlace(tear, x, y);
    const { share, scratch } = dressedAt(tear, x, y);
    if (place.bead <= 0 && share <= 0 && place.under <= 0 && place.distance > 1.25) return;
    deepest = Math.max(deepest, place.low);
    found.push({ ...place, k, x, y, ground: share, scratch });
  });
  const scale = depth / Math.max(deepest, 1e-3);
  return found.map((place) => {
    const { k, low, high, bead, fracture, fibre, distance, ground, scratch } = place;
    const down = scale * low;
    const skin = 0.03 * fibre * fracture * ease(0.9, 0.6, down / depth);
    const before = z[k];
    let after = before + (parent[k] - down + high + skin - before) * bead;
    // the toe of the old fillet had bitten a little into the plate
    const bitten = clamp(1.6 * gradient2(place.x / 2.6, place.y / 2.6, tear.seed + 33), 0, 1);
    after -= 0.06 * bitten * ease(1.24, 1.08, distance) * ease(0.97, 1.06, distance);
    const flat = parent[k] + 0.03 + 0.012 * scratch;
    const touched = ground * ease(-0.06, 0.01, after - parent[k]);
    z[k] = after + (Math.min(after, flat) - after) * touched;
    field.clean[k] = Math.max(field.clean[k], bead, place.under);
    return { ...place, down, ground: touched };
  });
}

const scarBox = (tear: Tear, x: number, y: number): Region => {
  const high = tear.width * 0.62 + (tear.length / 2) * Math.abs(Math.sin(tear.turn)) + 1;
  const reach = tear.length * 0.58 + 2;
  return { x0: x - reach, x1: x + reach, y0: y - high, y1: y + high };
};

/** Colours that the heat of the fillets left round the scar: grey, brown and a breath of blue, torn into patches. */
function paintTint(work: FaceWork, tear: Tear, x0: number, y0: number): void {
  const { length, width, seed } = tear;
  const c = Math.cos(tear.turn);
  const s = Math.sin(tear.turn);
  const box = scarBox(tear, x0, y0);
  const wide = { x0: box.x0 - TINTED, x1: box.x1 + TINTED, y0: box.y0 - TINTED, y1: box.y1 + TINTED };
  for (const field of patchesOf(work)) {
    forEachPixel(field.grid, wide, (k, px, py) => {
      const x = (px - x0) * c + (py - y0) * s;
      const y = -(px - x0) * s + (py - y0) * c;
      const out = Math.hypot(Math.max(0, Math.abs(x) - length / 2), Math.max(0, Math.abs(y) - width / 2));
      const patch = gradient2(x / 4.5, y / 3.5, seed + 35);
      const d = out + 1.3 * patch + 0.4 * gradient2(x / 1.1, y / 1.1, seed + 36);
      if (d > TINTED) return;
      const bare = tear.tint * (1 - field.bead[k]) * clamp(0.75 + 0.8 * patch, 0.15, 1);
      // mill scale hides what colours the steel below it
      const shown = bare * mix(0.2, 1, field.band[k]);
      mixColour(field, k, TONES.straw, 0.2 * shown * ease(1.4, 2.2, d) * ease(TINTED, 3, d));
      mixMaterial(field, k, TONES.blue, 0.46, 0.4, 0.3 * shown * ease(0.7, 1.4, d) * ease(2.6, 1.7, d));
      mixMaterial(field, k, TONES.brown, 0.52, 0.25, 0.34 * bare * ease(1.5, 0.5, d));
      mixMaterial(field, k, TONES.oxide, 0.58, 0.2, 0.4 * bare * ease(0.9, 0, d));
    });
  }
}

/** Bright fibrous fracture, dull skin of what is left of the beads, dirty plate where the attachment stood, fresh scratches. */
function paintTear({ strip }: FaceWork, tear: Tear, torn: readonly Torn[]): void {
  for (const { k, x, y, bead, fracture, fibre, under, down, ground, scratch } of torn) {
    const patch = gradient2(x / 3.6, y / 3, tear.seed + 11);
    const dirt = clamp(0.6 + 0.8 * patch + 0.3 * fibre, 0.1, 1);
    mixMaterial(strip, k, TONES.oxide, 0.66, 0.2, 0.4 * under * dirt);
    mixColour(strip, k, TONES.rust, 0.22 * under * clamp(0.2 - patch, 0, 1));
    strip.brush[k] *= (1 - bead) * (1 - 0.5 * under);
    if (bead > 0) {
      const skin = between(TONES.skin, TONES.meltedMetal, clamp(0.4 + 0.4 * patch + 0.2 * fibre, 0, 1));
      mixMaterial(strip, k, skin, 0.5, 0.5, 0.6 * bead);
    }
    if (fracture > 0) {
      const facet = gradient2(x / 0.3, y / 0.42, tear.seed + 12);
      const light = clamp(0.64 + 0.3 * fibre + 0.2 * facet + 0.2 * patch, 0.2, 1.1);
      const fresh = clamp(0.85 - 0.5 * Math.max(0, patch), 0.4, 1);
      mixMaterial(strip, k, scaled(TONES.meltedMetal, light), 0.38 + 0.1 * facet, 0.78, 0.85 * fracture * fresh);
      mixColour(strip, k, TONES.rust, 0.14 * ease(0.25, 0.7, -patch) * fracture);
      mixColour(strip, k, TONES.shade, 0.14 * ease(0.4, 1.5, down));
    }
    if (ground > 0) {
      mixMaterial(strip, k, scaled(TONES.cutMetal, 0.74 + 0.14 * scratch), 0.36, 0.8, 0.62 * ground);
      strip.brush[k] += (0.7 - strip.brush[k]) * ground;
      if (ground > 0.4) strip.brushAngle[k] = tear.turn + (tear.dressed?.turn ?? 0);
    }
  }
}

/**
 * Scar where a strongback or a tack was knocked off the plate, from `x` over `length` mm (10 to 46), torn out `severity` mm
 * deep at its deepest (0.24 to 1.7); remains of the fillets stand beside, in part dressed. Truth: size = greatest depth below
 * the plane of the plate round it; extent = where it lies 0.08 mm or more below.
 */
export const tornSurface: FeatureBuilder = (request, random): Feature => {
  let place: { tear: Tear; x: number; y: number } | null = null;
  let torn: readonly Torn[] = [];
  return {
    id: request.id,
    cut(work) {
      const x = request.x + Math.max(8, request.length) / 2;
      const toe = Math.abs(besideWeld(work, { ...request, y: undefined }, x, 0, 0)) - 2.5;
      const tear = drawTear(random.child("tear"), request, FARTHEST - toe - CLEAR);
      const y = besideWeld(work, request, x, tear.width / 2, CLEAR);
      torn = tearOut(work.strip, tear, x, y);
      place = { tear, x, y };
    },
    paint(work) {
      if (!place) return;
      paintTint(work, place.tear, place.x, place.y);
      paintTear(work, place.tear, torn);
    },
    measure: (work) =>
      place && measuredDepression(work, request.id, "torn-surface", scarBox(place.tear, place.x, place.y)),
  };
};
