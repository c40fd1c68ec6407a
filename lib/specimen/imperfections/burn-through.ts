import { clamp, ease } from "../../math";
import { columnX, forEachPixel, gradient2, sampleAt } from "../../surface";
import { mixMaterial } from "../field";
import type { FaceWork, Feature, FeatureBuilder } from "../work";
import { measuredPit } from "./measured-pit";
import { scaled, TONES } from "./tones";

interface Shape {
  readonly radiusX: number;
  readonly radiusY: number;
  readonly depth: number;
  readonly seed: number;
}

/** Distance from the middle in units of the hole's ragged outline (noise on the unit circle, so that it closes). */
function holeDistance(shape: Shape, dx: number, dy: number): { d: number; c: number; s: number } {
  const u = dx / shape.radiusX;
  const v = dy / shape.radiusY;
  const r = Math.hypot(u, v) || 1e-6;
  const c = u / r;
  const s = v / r;
  const outline =
    1 +
    0.3 * gradient2(1.1 * c + 5, 1.1 * s + 5, shape.seed) +
    0.1 * gradient2(2.3 * c + 9, 2.3 * s + 9, shape.seed + 1) +
    0.06 * gradient2(dx / 1.2, dy / 1.2, shape.seed + 2);
  return { d: r / outline, c, s };
}

/** Depth below the rim inside the hole: a rounded edge, a steep wall with a ledge of sagged metal, a lumpy bottom. */
function holeDepth(shape: Shape, d: number, dx: number, dy: number, c: number, s: number): number {
  const wall = 0.26 + 0.3 * clamp(0.5 + gradient2(1.3 * c + 3, 1.3 * s + 3, shape.seed + 6), 0, 1);
  const fall = clamp((0.98 - d) / wall, 0, 1);
  const profile = fall < 0.5 ? 2 * fall * fall : 1 - 2 * (1 - fall) ** 2;
  const ledgeAt = gradient2(1.2 * c + 1, 1.2 * s + 1, shape.seed + 7);
  const ledge = 0.45 * ease(0.1, 0.5, ledgeAt) * ease(0.55, 0.75, d) * ease(0.99, 0.86, d);
  const lumps =
    0.16 * gradient2(dx / 1.3, dy / 1.3, shape.seed + 8) + 0.07 * gradient2(dx / 0.5, dy / 0.5, shape.seed + 9);
  return shape.depth * profile * (1 - ledge) * (1 + lumps * ease(0.8, 0.4, d));
}

/** Metal that ran down and froze round the hole: heavier on one side, with drips. */
function sag(shape: Shape, d: number, dx: number, dy: number, c: number, s: number): number {
  const heavy = 0.6 + 0.35 * c + 0.55 * gradient2(1.2 * c + 7, 1.2 * s + 7, shape.seed + 3);
  const drip = 0.4 * Math.max(0, gradient2(dx / 1.5, dy / 1.5, shape.seed + 4));
  return Math.max(0.12, heavy + drip) * Math.exp(-(((d - 1.12) / (d < 1.12 ? 0.2 : 0.36)) ** 2));
}

/** Widens and swells the root run towards the hole. */
function swell(work: FaceWork, x: number, shape: Shape): void {
  const run = work.plan.runs[0];
  const { grid } = work.strip;
  for (let i = 0; i < grid.columns; i++) {
    const near = Math.exp(-(((columnX(grid, i) - x) / (1.15 * shape.radiusX)) ** 2));
    if (near < 0.004) continue;
    run.halfWidth[i] += 0.5 * shape.radiusY * near;
    run.height[i] += 0.5 * near;
    run.ripple[i] *= 1 - 0.6 * near;
  }
}

/** The outline is this much longer than what lies 0.6 mm below the plates. */
const EDGE_TO_HOLE = 1.2;

interface Touched {
  readonly k: number;
  readonly d: number;
  readonly down: number;
  readonly x: number;
  readonly y: number;
}

/**
 * Hole burnt through the root run about `x`, `severity` mm along the weld (4 to 9), its rim sagged and ragged. Truth: a
 * point at the middle of what lies 0.6 mm or more below the plates; width = the larger of its two extents; no size.
 */
export const burnThrough: FeatureBuilder = (request, random): Feature => {
  const draw = random.child("shape");
  const across = EDGE_TO_HOLE * (request.severity > 0 ? request.severity : 6);
  const shape: Shape = {
    radiusX: across / 2,
    radiusY: (across / 2) * draw.uniform(0.68, 0.86),
    depth: draw.uniform(3.2, 4.2),
    seed: draw.seed(),
  };
  const x = request.x + draw.normal(0, 0.15);
  let y = 0;
  const touched: Touched[] = [];
  return {
    id: request.id,
    plan: (work) => swell(work, request.x, shape),
    cut(work) {
      const { strip } = work;
      const run = work.plan.runs[0];
      y = run.centre[Math.round((request.x - strip.grid.x0) * strip.grid.perMm)] + draw.normal(0, 0.2);
      const reach = 2.3 * shape.radiusX;
      const before = strip.z.slice();
      forEachPixel(strip.grid, { x0: x - reach, x1: x + reach, y0: y - reach, y1: y + reach }, (k, px, py) => {
        const dx = px - x;
        const dy = py - y;
        const { d, c, s } = holeDistance(shape, dx, dy);
        if (d > 2.2) return;
        const weld = clamp(strip.bead[k] + ease(1.3, 0.95, d), 0, 1);
        // Inside, the level is carried over from the rim so that ripples end at the edge.
        const level = d < 0.95 ? sampleAt(strip.grid, before, x + (dx * 0.98) / d, y + (dy * 0.98) / d) : before[k];
        const down = d < 1 ? holeDepth(shape, d, dx, dy, c, s) : 0;
        strip.z[k] = level + sag(shape, d, dx, dy, c, s) * weld - down;
        touched.push({ k, d, down: down / shape.depth, x: px, y: py });
        if (d < 1.7) strip.clean[k] = 1;
      });
    },
    paint({ strip }) {
      for (const { k, d, down, x: px, y: py } of touched) {
        const n = gradient2(px / 1.4, py / 1.4, shape.seed + 12);
        const fine = gradient2(px / 0.5, py / 0.5, shape.seed + 13);
        if (d < 1) {
          const share = ease(0.02, 0.2, down);
          mixMaterial(strip, k, scaled(TONES.wall, 0.7 + 0.3 * n), 0.5, 0.45, 0.75 * share);
          mixMaterial(strip, k, TONES.rust, 0.8, 0.05, 0.4 * share * ease(0.1, 0.5, n + 0.4 * fine));
          mixMaterial(strip, k, TONES.shade, 0.6, 0.1, 0.4 * ease(0.5, 1, down));
        }
        mixMaterial(strip, k, TONES.oxide, 0.5, 0.35, 0.5 * ease(1.7, 1.05, d) * ease(0.9, 1, d));
        mixMaterial(
          strip,
          k,
          TONES.slag,
          0.3,
          0,
          0.6 * ease(0.15, 0.45, n + 0.3 * fine) * ease(1.6, 1.1, d) * ease(0.9, 1, d),
        );
        mixMaterial(
          strip,
          k,
          TONES.meltedMetal,
          0.3,
          0.8,
          0.25 * ease(0.12, 0.03, Math.abs(d - 1.02)) * clamp(0.5 + n, 0, 1),
        );
        strip.brush[k] *= 1 - ease(1.7, 1.2, d);
      }
    },
    measure: (work) => measuredPit(work, request.id, "burn-through", { x, y, reach: 1.45 * shape.radiusX }),
  };
};
