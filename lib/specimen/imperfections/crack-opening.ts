import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, fractal1, gradient1 } from "../../surface";
import { type Field, mixMaterial } from "../field";
import type { Point } from "../truth";
import { type NearLine, pixelsNear } from "./near-line";
import { between, TONES } from "./tones";

/** Width of a crack, mm, at t mm along a line of the given length. */
export type OpeningWidth = (t: number, length: number) => number;

/** Width of a stretch that is hardly to be seen, mm, unless the whole crack is finer. */
const HAIRLINE = 0.05;
/** Length over which an end tapers, mm. */
const TAPER = 1.3;
/** Metal still bridges a crack where a slow noise (-1 to 1) along it lies below this. */
const BRIDGED = -0.42;
/** Its last stretch, mm, does not vanish: it shows how far the crack goes. */
const NEAR_END = 2;

/**
 * Width that swells and thins along a crack up to about `widest` mm: hairline stretches, bridges of sound metal, ends that
 * taper over 1.3 mm.
 */
export function unevenOpening(random: RandomStream, widest: number): OpeningWidth {
  const seed = random.seed();
  return (t, length) => {
    const end = clamp(Math.min(t, length - t) / TAPER, 0, 1);
    const swell = 0.16 + 1.3 * ease(-0.35, 0.7, fractal1(t / 5.2, seed, 2));
    const beat = clamp(
      0.8 + 0.7 * fractal1(t / 0.9, seed + 3, 2),
      t < NEAR_END || t > length - NEAR_END ? 0.65 : 0.35,
      1.4,
    );
    if (gradient1(t / 2.3, seed + 9) < BRIDGED && t > NEAR_END && t < length - NEAR_END) return 0;
    return Math.max(Math.min(HAIRLINE, widest) * Math.sqrt(end), widest * swell * beat * Math.sqrt(end));
  };
}

/** Width that falls unevenly from `widest` mm where a crack starts to nothing at its tip. */
export function taperingOpening(random: RandomStream, widest: number): OpeningWidth {
  const seed = random.seed();
  return (t, length) =>
    Math.max(
      Math.min(HAIRLINE, widest) * clamp((2 * (length - t)) / TAPER, 0, 1),
      widest * Math.max(0, 1 - t / length) ** 0.5 * clamp(0.8 + 0.9 * fractal1(t / 1.1, seed, 2), 0.2, 1.3),
    );
}

/** Width of a short crack: about `widest` mm in its middle, nothing at both tips, uneven. */
export function lensOpening(random: RandomStream, widest: number): OpeningWidth {
  const seed = random.seed();
  return (t, length) =>
    widest *
    Math.max(0, Math.sin((Math.PI * t) / length)) ** 0.6 *
    clamp(0.85 + 1.1 * fractal1(t / 0.9, seed, 2), 0.12, 1.25);
}

/** What a crack left beside it for the painter. */
export type CrackTrace = readonly NearLine[];

/** Share of a pixel `pixel` mm wide that a slit `width` mm wide covers when its middle line passes at `distance`. */
export function slitCoverage(width: number, distance: number, pixel: number): number {
  const low = Math.max(distance - width / 2, -pixel / 2);
  const high = Math.min(distance + width / 2, pixel / 2);
  return clamp((high - low) / pixel, 0, 1);
}

/** How far a place stands out from the metal 0.7 mm round it, mm. */
function relief(field: Field, k: number): number {
  const { columns, rows, perMm } = field.grid;
  const step = Math.round(0.7 * perMm);
  const i = k % columns;
  const j = (k - i) / columns;
  const at = (di: number, dj: number) => field.z[clamp(j + dj, 0, rows - 1) * columns + clamp(i + di, 0, columns - 1)];
  return field.z[k] - 0.25 * (at(-step, 0) + at(step, 0) + at(0, -step) + at(0, step));
}

const LIP_HEIGHT = 0.035;
/** On crests a crack is finer and in valleys wider: by so much per mm of relief, at least and at most. */
const BY_RELIEF = { perMm: 8, least: 0.6, most: 1.5 };
/** A finer crack is closed at the surface and casts no shadow, mm; from the second on it gapes fully. */
const GAPES = { from: 0.06, fully: 0.19 };

/**
 * Opens a crack `depth` mm deep along a polyline: hairline on crests and wider in valleys, one edge a little higher than
 * the other. Writes the share of each pixel that gapes to `field.crack`; returns the pixels beside it.
 */
export function openCrack(field: Field, points: readonly Point[], width: OpeningWidth, depth: number): CrackTrace {
  const pixel = 1 / field.grid.perMm;
  const { near, length } = pixelsNear(field, points, 0.6);
  const seed = Math.round(points[0][0] * 91 + points[0][1] * 57);
  const changes = near.map(({ k, distance, along, side }) => {
    const wide = width(along, length) * clamp(1 - BY_RELIEF.perMm * relief(field, k), BY_RELIEF.least, BY_RELIEF.most);
    if (wide <= 0) return 0;
    const half = Math.max(wide / 2, 0.95 * pixel);
    const notch = ease(half, 0, distance);
    const turn = gradient1(along / 7, seed);
    const raised = side * turn > 0 ? Math.min(1, 3 * Math.abs(turn)) : 0;
    const gapes = ease(GAPES.from, GAPES.fully, wide);
    const lip = LIP_HEIGHT * gapes * raised * Math.exp(-distance / 0.24) * (1 - notch);
    field.crack[k] = Math.max(field.crack[k], slitCoverage(wide, distance, pixel));
    field.clean[k] = Math.max(field.clean[k], 0.6);
    return lip - depth * (0.12 + 0.88 * gapes) * Math.min(1, wide / HAIRLINE) * notch;
  });
  near.forEach(({ k }, n) => {
    field.z[k] += changes[n];
  });
  return near;
}

/** What has settled beside a crack: nothing, oxide that crept out while it was hot, or rust from moisture in it. */
export const SEAMS = ["bare", "oxide", "rust"] as const;
export type Seam = (typeof SEAMS)[number];

const SEAM_LOOKS = {
  oxide: { tone: TONES.soot, reach: 0.34, share: 0.26 },
  rust: { tone: TONES.rust, reach: 0.4, share: 0.24 },
} as const;

/** Stains the metal beside a crack in patches along it. */
export function paintSeam(field: Field, trace: CrackTrace, seam: Seam, seed: number): void {
  if (seam === "bare") return;
  const { tone, reach, share } = SEAM_LOOKS[seam];
  for (const { k, distance, along } of trace) {
    const here = reach * clamp(0.6 + gradient1(along / 2.1, seed) + 0.5 * gradient1(along / 0.6, seed + 1), 0, 1.4);
    if (distance < here) mixMaterial(field, k, tone, 0.75, 0.15, share * (1 - distance / here));
  }
}

/** How dark a pixel is of which a share gapes: little light is lost in a hairline, some comes back from the walls of an open crack. */
const darkness = (gaping: number): number => Math.min(0.8, 0.64 * gaping + 0.2 * gaping ** 3);

/** Colours the open cracks within a box of mm, the darker the larger the share of the pixel that gapes. */
export function paintCracks(field: Field, box: { x0: number; x1: number; y0: number; y1: number }): void {
  forEachPixel(field.grid, box, (k) => {
    const gaping = field.crack[k];
    if (gaping <= 0) return;
    mixMaterial(field, k, between(TONES.soot, TONES.shade, gaping), 0.9, 0, darkness(gaping));
    field.brush[k] *= 1 - gaping;
  });
}

/** Box round a set of lines with a margin, mm. */
export function boxAround(lines: readonly (readonly Point[])[], margin: number) {
  let x0 = Number.POSITIVE_INFINITY;
  let x1 = Number.NEGATIVE_INFINITY;
  let y0 = Number.POSITIVE_INFINITY;
  let y1 = Number.NEGATIVE_INFINITY;
  for (const line of lines)
    for (const [x, y] of line) {
      x0 = Math.min(x0, x);
      x1 = Math.max(x1, x);
      y0 = Math.min(y0, y);
      y1 = Math.max(y1, y);
    }
  return { x0: x0 - margin, x1: x1 + margin, y0: y0 - margin, y1: y1 + margin };
}
