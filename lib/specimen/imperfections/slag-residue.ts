import { clamp, ease, mix } from "../../math";
import { forEachPixel, gradient1, gradient2, hash01, sampleAt } from "../../surface";
import { type Field, mixMaterial } from "../field";
import { middleOfWeld, runEdgeAt, toeAt } from "../runs/edit";
import type { FaceWork, Feature, FeatureBuilder, FeatureRequest } from "../work";
import { measuredSlag } from "./measured-mask";
import { between, TONES } from "./tones";

const FACET = { along: 1.25, across: 0.75 };

/** Broken glass: the tilted flat on which a place lies, as a height of about -1..1, and a number 0..1 of its own. */
function brokenFacet(x: number, y: number, seed: number): { height: number; own: number } {
  const u = x / FACET.along;
  const v = y / FACET.across;
  let nearest = Number.POSITIVE_INFINITY;
  let height = 0;
  let own = 0;
  for (let j = Math.floor(v) - 1; j <= Math.floor(v) + 1; j++)
    for (let i = Math.floor(u) - 1; i <= Math.floor(u) + 1; i++) {
      const du = u - i - hash01(i, j, seed);
      const dv = v - j - hash01(i, j, seed + 1);
      const away = du * du + dv * dv;
      if (away >= nearest) continue;
      nearest = away;
      own = hash01(i, j, seed + 2);
      const tiltU = 2 * hash01(i, j, seed + 3) - 1;
      const tiltV = 2 * hash01(i, j, seed + 4) - 1;
      height = 1.1 * (own - 0.5) + tiltU * du + tiltV * dv;
    }
  return { height, own };
}

type Line = (x: number) => number;

/** Middle line of the residue: along a toe, or (variant "between") in the valley between the last run and the one below. */
function middleLine(work: FaceWork, request: FeatureRequest): Line {
  const last = work.plan.runs.length - 1;
  if (request.variant !== "between" || last < 1) return (x) => toeAt(work, request.side, x, 1.2) - 0.2 * request.side;
  const run = Math.min(request.run ?? last, last);
  const isUnderNext = request.side > 0 && run < last;
  return (x) => {
    const edge = isUnderNext ? runEdgeAt(work, run, 1, x, 0.8) : runEdgeAt(work, Math.max(1, run), -1, x, 0.8);
    return Number.isNaN(edge) ? middleOfWeld(work, x) : edge;
  };
}

interface Touched {
  readonly k: number;
  readonly share: number;
  readonly own: number;
  readonly rim: number;
}

/** Fills the crease along a line with broken glassy slag and returns what it covers. */
function laySlag(field: Field, line: Line, request: FeatureRequest, seed: number, thickness: number): Touched[] {
  const { grid, z } = field;
  const wide = request.severity > 0 ? request.severity : 1.3;
  const { x: x0, length } = request;
  const before = z.slice();
  const touched: Touched[] = [];
  const middle = line(x0 + length / 2);
  const box = { x0: x0 - 0.5, x1: x0 + length + 0.5, y0: middle - 6, y1: middle + 6 };
  forEachPixel(grid, box, (k, x, y) => {
    const t = (x - x0) / length;
    if (t <= 0 || t >= 1) return;
    const centre = line(x) + 0.22 * gradient1(x / 3.2, seed);
    const spindle = (1 - (2 * t - 1) ** 4) ** 0.75;
    const uneven = clamp(0.76 + 0.5 * gradient1(x / 2.9, seed + 1) + 0.16 * gradient1(x / 1.1, seed + 2), 0.3, 1.35);
    const half = (wide / 2) * spindle * uneven;
    if (half < 0.09) return;
    const away = Math.abs(y - centre) / half;
    const ragged = 0.24 * gradient2(x / 1.3, y / 0.8, seed + 3) + 0.14 * gradient2(x / 0.45, y / 0.4, seed + 4);
    const pixels = (1 - away + ragged) * half * grid.perMm;
    const chip = gradient2(x / 1.6, y / 0.9, seed + 5) > 0.52 && t > 0.12 && t < 0.88 ? 1 : 0;
    const share = clamp(pixels + 0.5, 0, 1) * (1 - chip);
    if (share <= 0) return;
    const low = sampleAt(grid, before, x, centre - half - 0.1);
    const high = sampleAt(grid, before, x, centre + half + 0.1);
    const bridge = mix(low, high, clamp(0.5 + (0.5 * (y - centre)) / half, 0, 1));
    const { height, own } = brokenFacet(x, y, seed + 6);
    const full = thickness * (0.55 + 0.5 * height) * ease(0, 2.5, pixels);
    const sunk = -0.35 * Math.max(0, bridge - before[k]);
    const level = Math.max(before[k] + 0.015, mix(before[k], bridge, 0.8) + sunk + full - 0.05);
    z[k] = mix(z[k], level, share);
    field.slag[k] = Math.max(field.slag[k], share);
    field.clean[k] = 1;
    touched.push({ k, share, own, rim: ease(2.6, 0.4, pixels) });
  });
  return touched;
}

/** Blisters in the glass, mm deep. */
function pitSlag(field: Field, touched: readonly Touched[], seed: number): void {
  for (const { k, share } of touched) if (share > 0.9 && hash01(k, 5, seed) < 0.012) field.z[k] -= 0.05;
}

/**
 * Glassy slag left from `x` over `length` mm, about `severity` mm wide (0.8 to 2), variant "toe" (default; at the toe on
 * `side`) or "between" (in the valley between runs). Truth: from the first to the last column where slag covers half a
 * pixel; width = the widest column; no size.
 */
export const slagResidue: FeatureBuilder = (request, random): Feature => {
  const draw = random.child("shape");
  const seed = draw.seed();
  const thickness = draw.uniform(0.1, 0.24);
  let touched: Touched[] = [];
  let line: Line = () => 0;
  return {
    id: request.id,
    cut(work) {
      line = middleLine(work, request);
      touched = laySlag(work.strip, line, request, seed, thickness);
      pitSlag(work.strip, touched, seed + 20);
    },
    paint({ strip }) {
      for (const { k, share, own, rim } of touched) {
        const colour = between(TONES.slag, TONES.slagGreen, own);
        mixMaterial(strip, k, colour, 0.13 + 0.16 * own, 0, 0.97 * share);
        const crumbled = 0.5 * rim * ease(0.55, 0.9, hash01(k >> 1, 9, seed));
        mixMaterial(strip, k, TONES.slagPale, 0.7, 0, crumbled * share);
        strip.brush[k] *= 1 - share;
      }
    },
    measure: (work) =>
      measuredSlag(work, request.id, {
        x0: request.x - 1,
        x1: request.x + request.length + 1,
        y0: line(request.x + request.length / 2) - 6,
        y1: line(request.x + request.length / 2) + 6,
      }),
  };
};
