import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, fractal2, gradient1, gradient2 } from "../../surface";
import { type Field, mixColour, mixMaterial } from "../field";
import type { Region } from "../measure";
import type { FaceWork, Feature, FeatureBuilder, FeatureRequest } from "../work";
import { besideWeld, FARTHEST } from "./beside-weld";
import { measuredDepression } from "./measured-mark";
import { between, scaled, TONES } from "./tones";

/** How a piece came off: where the plate gave way, where weld metal stayed behind. Shares of the scar unless said otherwise. */
interface Tear {
  readonly length: number;
  readonly width: number;
  readonly depth: number;
  readonly turn: number;
  /** Towards which end and which edge the blow went: there the wall is steep. */
  readonly heading: 1 | -1;
  readonly edge: 1 | -1;
  /** Middle and half length of the torn-out part along the scar, -1..1. */
  readonly torn: number;
  readonly tornHalf: number;
  /** Height of the metal left standing, mm, and on which side of the scar. */
  readonly stub: number;
  readonly pieces: number;
  readonly seed: number;
}

const WIDTH = { least: 4, most: 11.5, clear: 1 };

function drawTear(random: RandomStream, request: FeatureRequest, room: number): Tear {
  const length = Math.max(8, request.length);
  const wanted = clamp(length * random.uniform(0.22, 0.42), WIDTH.least, WIDTH.most);
  return {
    length,
    width: Math.max(WIDTH.least, Math.min(wanted, room)),
    depth: request.severity > 0 ? request.severity : 0.8,
    turn: random.normal(0, 0.04),
    heading: random.pick([1, -1]),
    edge: random.pick([1, -1]),
    torn: random.uniform(-0.25, 0.25),
    tornHalf: random.uniform(0.5, 0.85),
    stub: random.uniform(0.15, 0.7) * clamp(request.severity + 0.2, 0.3, 1.2),
    pieces: random.uniform(2.2, 4.5),
    seed: random.seed(),
  };
}

interface Torn {
  readonly k: number;
  /** 0 outside the scar, 1 well inside. */
  readonly share: number;
  /** 0..1 in the burnt border round it. */
  readonly border: number;
  readonly down: number;
  /** Lightness of the fracture's grain, about -1..1. */
  readonly grain: number;
}

/** Distance from the middle of a scar, 1 at its edge: a worn rectangle with ragged borders. */
function scarDistance(tear: Tear, u: number, v: number, x: number, y: number): number {
  const { seed } = tear;
  const wander = 0.16 * gradient2(x / 5.5, y / 3.4, seed) + 0.1 * gradient2(x / 1.9, y / 1.5, seed + 1);
  const frayed = 0.05 * gradient2(x / 0.6, y / 0.6, seed + 2);
  const narrowed = 0.3 * gradient1(u * 1.7, seed + 3);
  return (Math.abs(u) ** 3 + Math.abs(v * (1 + narrowed)) ** 2.4) ** (1 / 2.6) + wander + frayed;
}

/** Pulls the piece off: plate torn out in steps like broken wood, a stub of the fillet standing beside, ragged at its top. */
function tearOut(field: Field, tear: Tear, x0: number, y0: number): Torn[] {
  const { grid, z, parent } = field;
  const { length, width, depth, seed, heading, edge } = tear;
  const c = Math.cos(tear.turn);
  const s = Math.sin(tear.turn);
  const found: { k: number; share: number; border: number; low: number; high: number; grain: number }[] = [];
  let deepest = 0;
  forEachPixel(grid, scarBox(tear, x0, y0), (k, x, y) => {
    if (field.bead[k] > 0.3) return;
    const u = ((x - x0) * c + (y - y0) * s) / (length / 2);
    const v = (-(x - x0) * s + (y - y0) * c) / (width / 2);
    if (Math.abs(u) > 1.55 || Math.abs(v) > 1.75) return;
    const d = scarDistance(tear, u, v, x, y);
    const border = ease(1.55, 1, d + 0.22 * gradient2(x / 2.6, y / 2.1, seed + 10)) * (1 - ease(1.07, 0.84, d));
    if (d > 1.08 && border <= 0.01) return;
    const share = ease(1.07, 0.84, d);
    const along = (u - tear.torn) / tear.tornHalf + 0.3 * gradient2(x / 4, y / 3, seed + 4);
    // steep where the lever stood, running out where it gave way
    const run = along * heading > 0 ? ease(1, 0.72, along * heading) : ease(-1, 0.35, along * heading);
    const pulled = clamp(0.62 + 0.5 * edge * v + 0.4 * gradient2(x / 3.1, y / 2.2, seed + 5), 0, 1.3);
    const lift = fractal2(x / 2.6, y / 1.1, seed + 6, 3, 0.6);
    // torn in ledges with sloping fronts; their edges follow the fracture, not a grid
    const ledge = 3.2 * (lift + 0.06 * u + 0.05 * gradient2(x / 1.2, y / 0.8, seed + 13));
    const stepped = (Math.floor(ledge) + ease(0.3, 0.7, ledge - Math.floor(ledge))) / 3.2;
    const rough = 0.66 * lift + 0.34 * stepped + 0.16 * gradient2(x / 0.7, y / 0.55, seed + 7);
    const low = share * Math.max(0, run * pulled * (0.72 + 0.55 * rough));
    const fillet = ease(0.15, 0.5, -edge * v + 0.35 * gradient1((u * tear.pieces) / 1.3, seed + 8));
    const broken = clamp(0.45 + 0.9 * gradient2(x / 2.2, y / 1.3, seed + 9), 0, 1.1);
    const high = tear.stub * share * fillet * broken * (1 - ease(0.1, 0.5, low)) * ease(1.02, 0.8, d);
    deepest = Math.max(deepest, low);
    found.push({ k, share, border, low, high, grain: rough });
  });
  const scale = deepest > 0 ? depth / deepest : 0;
  return found.map(({ k, share, border, low, high, grain }) => {
    const down = scale * low;
    const skin = 0.045 * (grain - 0.2) * share * Math.min(1, depth + 0.3);
    z[k] += (parent[k] - down + high - z[k]) * share + (down < depth * 0.8 ? skin : 0);
    field.clean[k] = Math.max(field.clean[k], share);
    return { k, share, border, down, grain };
  });
}

const scarBox = (tear: Tear, x: number, y: number): Region => {
  const high = tear.width * 0.62 + (tear.length / 2) * Math.abs(Math.sin(tear.turn)) + 1;
  const reach = tear.length * 0.58 + 2;
  return { x0: x - reach, x1: x + reach, y0: y - high, y1: y + high };
};

/** Matt grey fracture with bright grain, dark where it lies deep; a smoky border from when the piece was welded on. */
function paintTear(work: FaceWork, tear: Tear, torn: readonly Torn[]): void {
  const { strip } = work;
  const { columns, perMm } = strip.grid;
  for (const { k, share, border, down, grain } of torn) {
    const x = (k % columns) / perMm;
    const y = Math.floor(k / columns) / perMm;
    const patch = gradient2(x / 4.2, y / 3, tear.seed + 11);
    if (border > 0) {
      mixMaterial(strip, k, TONES.oxide, 0.6, 0.2, 0.36 * clamp(0.3 + 1.3 * patch, 0, 1) * border);
      mixColour(strip, k, TONES.brown, 0.2 * clamp(0.3 - patch, 0, 1) * border);
    }
    if (share <= 0) continue;
    const facet = clamp(0.5 + 0.8 * gradient2(x / 0.55, y / 0.45, tear.seed + 12), 0, 1);
    const light = clamp(0.42 + 0.26 * grain + 0.22 * (facet - 0.5) + 0.24 * patch, 0.05, 1);
    const metal = between(TONES.wall, scaled(TONES.meltedMetal, 0.92), light);
    const old = ease(0.15, 0.7, patch + 0.25 * grain);
    mixMaterial(strip, k, metal, 0.5 + 0.14 * facet, 0.62, 0.78 * share);
    mixMaterial(strip, k, TONES.oxide, 0.66, 0.18, 0.5 * old * share);
    mixColour(strip, k, TONES.rust, 0.16 * ease(0.3, 0.8, -patch + 0.4 * (facet - 0.5)) * share);
    if (down > 0.5) mixColour(strip, k, TONES.shade, 0.16 * ease(0.5, 1.6, down));
    strip.brush[k] *= 1 - share;
  }
}

/**
 * Scar where a strongback or a tack was knocked off the plate, from `x` over `length` mm (10 to 46), torn out `severity` mm
 * deep at its deepest (0.24 to 1.7); part of the fillet may stand beside it. Truth: size = greatest depth below the plane of the
 * plate round it; extent = where it lies 0.08 mm or more below.
 */
export const tornSurface: FeatureBuilder = (request, random): Feature => {
  let tear: Tear | null = null;
  let torn: readonly Torn[] = [];
  let box: Region | null = null;
  return {
    id: request.id,
    cut(work) {
      const x = request.x + Math.max(8, request.length) / 2;
      const toe = Math.abs(besideWeld(work, { ...request, y: undefined }, x, 0, 0)) - 2.5;
      tear = drawTear(random.child("tear"), request, FARTHEST - toe - WIDTH.clear);
      const half = tear.width / 2;
      const y = besideWeld(work, request, x, half, WIDTH.clear);
      torn = tearOut(work.strip, tear, x, y);
      box = scarBox(tear, x, y);
    },
    paint(work) {
      if (tear) paintTear(work, tear, torn);
    },
    measure: (work) => (box ? measuredDepression(work, request.id, "torn-surface", box) : null),
  };
};
