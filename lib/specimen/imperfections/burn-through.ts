import { clamp, ease, mix } from "../../math";
import type { RandomStream } from "../../random";
import { columnX, forEachPixel, gradient2, sampleAt } from "../../surface";
import { mixMaterial } from "../field";
import type { FaceWork, Feature, FeatureBuilder } from "../work";
import { measuredPit } from "./measured-pit";
import { scaled, TONES } from "./tones";

/** How the melt left: all of it, all but a skin that froze over a part of the hole, or hardly at all. */
type Manner = "open" | "half-closed" | "sagged";

interface Shape {
  readonly manner: Manner;
  readonly radiusX: number;
  readonly radiusY: number;
  /** Turn of the oval, radians. */
  readonly turn: number;
  readonly depth: number;
  /** Height of the rim that ran together, mm, and where most of it went, radians. */
  readonly lip: number;
  readonly heavyAt: number;
  /** The skin over a half-closed hole: from which side, radians, and how far in towards the middle (share of the radius). */
  readonly skinAt: number;
  readonly skinReach: number;
  readonly seed: number;
}

const MANNERS: readonly Manner[] = ["open", "half-closed", "half-closed", "sagged"];

function drawShape(random: RandomStream, severity: number): Shape {
  const across = EDGE_TO_HOLE * (severity > 0 ? severity : 6);
  const manner = random.pick(MANNERS);
  const long = across / 2;
  const short = long * random.uniform(0.52, 0.95);
  const isAlong = long > 2.6 || random.chance(0.6);
  const depth = Math.min(4.2, random.uniform(1.1, 1.5) + 0.45 * across * random.uniform(0.7, 1.1));
  return {
    manner,
    radiusX: isAlong ? long : short,
    radiusY: isAlong ? short : long,
    turn: random.normal(0, 0.25),
    depth: manner === "sagged" ? random.uniform(2.2, 2.8) : depth,
    lip: random.uniform(0.25, 0.95) * clamp(long / 2.5, 0.55, 1),
    heavyAt: random.uniform(0, 2 * Math.PI),
    skinAt: random.uniform(0, 2 * Math.PI),
    skinReach: random.uniform(0.45, 1.05),
    seed: random.seed(),
  };
}

/** Distance from the middle in units of the hole's ragged outline (noise on the unit circle, so that it closes). */
function holeDistance(shape: Shape, dx: number, dy: number): { d: number; c: number; s: number } {
  const turnC = Math.cos(shape.turn);
  const turnS = Math.sin(shape.turn);
  const u = (dx * turnC + dy * turnS) / shape.radiusX;
  const v = (-dx * turnS + dy * turnC) / shape.radiusY;
  const r = Math.hypot(u, v) || 1e-6;
  const c = u / r;
  const s = v / r;
  const outline =
    1 +
    0.34 * gradient2(0.9 * c + 5, 0.9 * s + 5, shape.seed) +
    0.07 * gradient2(2 * c + 9, 2 * s + 9, shape.seed + 1) +
    0.035 * gradient2(dx / 1.3, dy / 1.3, shape.seed + 2);
  return { d: r / outline, c, s };
}

/** How far a skin of metal froze over the hole at a place, 0..1: a tongue with a rounded, uneven edge. */
function skinOver(shape: Shape, d: number, c: number, s: number, dx: number, dy: number): number {
  if (shape.manner !== "half-closed") return 0;
  const towards = c * Math.cos(shape.skinAt) + s * Math.sin(shape.skinAt);
  const edge = 1 - shape.skinReach + 0.16 * gradient2(dx / 1.4, dy / 1.4, shape.seed + 7);
  return ease(edge - 0.06, edge + 0.12, towards * d + 0.12 * (1 - d));
}

/** Depth below the rim inside the hole: a rounded edge, a wall of varying steepness, a lumpy bottom, perhaps a skin over a part. */
function holeDepth(shape: Shape, d: number, dx: number, dy: number, c: number, s: number): number {
  const steep = clamp(0.5 + gradient2(1.1 * c + 3, 1.1 * s + 3, shape.seed + 6), 0, 1);
  const wall = shape.manner === "sagged" ? 0.6 + 0.3 * steep : 0.3 + 0.42 * steep;
  const fall = clamp((1 - d) / wall, 0, 1);
  const profile = fall < 0.5 ? 2 * fall * fall : 1 - 2 * (1 - fall) ** 2;
  const lumps =
    0.16 * gradient2(dx / 1.3, dy / 1.3, shape.seed + 8) + 0.06 * gradient2(dx / 0.5, dy / 0.5, shape.seed + 9);
  const bare = shape.depth * profile * (1 + lumps * ease(0.8, 0.4, d));
  // the skin hangs a little below the plates and sags towards its edge
  const skin = Math.min(bare, SKIN_DEPTH + 0.35 * (1 - d) + 0.1 * gradient2(dx / 0.8, dy / 0.8, shape.seed + 10));
  return mix(bare, skin, skinOver(shape, d, c, s, dx, dy));
}

/** Metal that ran down and froze round the hole: heavy on one side, hardly there on the other, with drips. */
function sag(shape: Shape, d: number, dx: number, dy: number, c: number, s: number): number {
  const towards = c * Math.cos(shape.heavyAt) + s * Math.sin(shape.heavyAt);
  const heavy = 0.5 + 0.5 * towards + 0.6 * gradient2(1.2 * c + 7, 1.2 * s + 7, shape.seed + 3);
  const drip = 0.5 * Math.max(0, gradient2(dx / 1.5, dy / 1.5, shape.seed + 4));
  const width = (d < 1.12 ? 0.2 : 0.34) * (1 + 0.5 * towards * (d < 1.12 ? 0 : 1));
  return shape.lip * clamp(heavy + drip, 0, 1.5) * Math.exp(-(((d - 1.12) / width) ** 2));
}

/** Widens and swells the root run towards the hole. */
function swell(work: FaceWork, x: number, shape: Shape): void {
  const run = work.plan.runs[0];
  const { grid } = work.strip;
  for (let i = 0; i < grid.columns; i++) {
    const near = Math.exp(-(((columnX(grid, i) - x) / (1.15 * shape.radiusX)) ** 2));
    if (near < 0.004) continue;
    run.halfWidth[i] += (0.5 * shape.radiusY - 0.2) * near;
    run.height[i] += 0.45 * shape.lip * near;
    run.ripple[i] *= 1 - 0.6 * near;
  }
}

/** The outline is this much longer than what lies 0.6 mm below the plates. */
const EDGE_TO_HOLE = 1.2;
/** A skin of metal over a part of the hole lies this far below the rim, mm. */
const SKIN_DEPTH = 1.85;

interface Touched {
  readonly k: number;
  readonly d: number;
  readonly down: number;
  readonly x: number;
  readonly y: number;
}

/**
 * Hole burnt through the root run about `x`, `severity` mm across where it is widest (2.4 to 8): round or oblong, open, half
 * closed by a skin, or sagged to a pit, its rim run together on one side. Truth: a point at the middle of what lies 0.6 mm
 * or more below the plates; width = the larger of its two extents; no size.
 */
export const burnThrough: FeatureBuilder = (request, random): Feature => {
  const draw = random.child("shape");
  const shape = drawShape(draw, request.severity);
  const farthest = Math.max(shape.radiusX, shape.radiusY);
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
      const reach = 2.3 * farthest;
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
          mixMaterial(strip, k, scaled(TONES.wall, 1.65 + 0.5 * n), 0.5, 0.45, 0.75 * share);
          mixMaterial(strip, k, TONES.rust, 0.8, 0.05, 0.3 * share * ease(0.1, 0.5, n + 0.4 * fine));
          mixMaterial(strip, k, TONES.shade, 0.6, 0.1, 0.08 * ease(0.6, 1, down));
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
    measure: (work) => measuredPit(work, request.id, "burn-through", { x, y, reach: 1.45 * farthest }),
  };
};
