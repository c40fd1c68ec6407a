import { clamp, ease, mix } from "../../math";
import { columnX, copiedGrid, forEachPixel, gradient2, sampleAt } from "../../surface";
import { mixMaterial } from "../field";
import { levelBetweenPlates } from "../runs/groove";
import type { FaceWork, Feature, FeatureBuilder } from "../work";
import {
  type BurntHole,
  drawBeads,
  drawBurntHole,
  heightInside,
  type Seen,
  SLOT,
  sag,
  seenFrom,
  withBeads,
} from "./burnt-hole";
import { measuredPit } from "./measured-pit";
import { roundOff } from "./round-off";
import { between, scaled, TONES } from "./tones";

/** The run thins and draws in before the hole, closes round it, and starts again swollen behind it. */
function disturbRun(work: FaceWork, x: number, shape: BurntHole): void {
  const run = work.plan.runs[0];
  const { grid } = work.strip;
  const reach = shape.radiusX + 1.2;
  for (let i = 0; i < grid.columns; i++) {
    const along = (columnX(grid, i) - x) * run.direction;
    const near = Math.exp(-((along / (1.1 * reach)) ** 2));
    const before = Math.exp(-(((along + 2.1 * reach) / (0.95 * reach)) ** 2));
    const behind = Math.exp(-(((along - 1.9 * reach) / (0.7 * reach)) ** 2));
    if (near + before + behind < 0.004) continue;
    // drawn in, but never so far that an edge of the gap stays open
    const least = Math.min(run.halfWidth[i], work.plan.groove + Math.abs(run.centre[i]) + FUSED_BEYOND);
    run.halfWidth[i] = Math.max(least, run.halfWidth[i] * (1 - 0.2 * before + 0.08 * behind));
    run.height[i] *= 1 - 0.45 * before;
    run.halfWidth[i] += Math.max(0, 0.62 * shape.radiusY - 0.25) * near;
    run.height[i] += 0.35 * shape.lip * near + 0.2 * behind;
    run.ripple[i] *= 1 - 0.6 * near;
  }
}

const FUSED_BEYOND = 0.5;
const RING = 16;

interface Touched extends Seen {
  readonly k: number;
  readonly down: number;
  readonly x: number;
  readonly y: number;
}

/**
 * Hole burnt through the root run about `x`, `severity` mm across where it is widest (2.4 to 8): round or oblong, open, a
 * keyhole with its slot, half closed by a wrinkled skin, or sagged to a pit; a torn, scaled rim that drooped on one side, with
 * drops on it. Truth: a point at the middle of what lies 0.6 mm or more below the plates; width = the larger of its two
 * extents; no size.
 */
export const burnThrough: FeatureBuilder = (request, random): Feature => {
  const draw = random.child("shape");
  const shape = drawBurntHole(draw, request.severity);
  const beads = drawBeads(random.child("beads"), shape);
  const isKeyhole = shape.manner === "keyhole";
  const farthest = Math.max(shape.radiusX * (isKeyhole ? SLOT.reach : 1), shape.radiusY);
  const x = request.x + draw.normal(0, 0.15) - (isKeyhole ? 0.35 * shape.slot * shape.radiusX : 0);
  let y = 0;
  const touched: Touched[] = [];
  return {
    id: request.id,
    plan: (work) => disturbRun(work, request.x, shape),
    cut(work) {
      const { strip } = work;
      const run = work.plan.runs[0];
      y = run.centre[Math.round((request.x - strip.grid.x0) * strip.grid.perMm)] + draw.normal(0, 0.2);
      const reach = 2.2 * farthest + 1;
      const before = copiedGrid(strip.z);
      const chord = levelBetweenPlates(work);
      const rimPixels: number[] = [];
      let middle = 0;
      for (let n = 0; n < RING; n++) {
        const angle = (2 * Math.PI * n) / RING;
        const away = [1.1 * shape.radiusX * Math.cos(angle), 1.1 * shape.radiusY * Math.sin(angle)];
        middle += sampleAt(strip.grid, before, x + away[0], y + away[1]) / RING;
      }
      forEachPixel(strip.grid, { x0: x - reach, x1: x + reach, y0: y - reach, y1: y + reach }, (k, px, py, i) => {
        const plates = chord(i, py);
        const dx = px - x;
        const dy = py - y;
        const seen = seenFrom(shape, dx, dy);
        const { d } = seen;
        if (d > 2.4) return;
        const weld = clamp(strip.bead[k] + ease(1.3, 0.95, d), 0, 1);
        // inside, ripples end at the edge and the level goes over into that of the whole rim
        const rim = mix(before[k], middle, ease(1.02, 0.7, d)) + sag(shape, seen, dx, dy) * weld;
        const inside = d < 1 ? heightInside(shape, seen, dx, dy, { rim, plates }) : rim;
        strip.z[k] = withBeads(shape, beads, dx, dy, mix(before[k], middle, 0.5), inside);
        touched.push({
          k,
          ...seen,
          down: clamp((rim - strip.z[k]) / (rim - plates + shape.deep), 0, 1),
          x: px,
          y: py,
        });
        if (d > 0.72 && d < 1.2) rimPixels.push(k);
        if (d < 1.7) strip.clean[k] = 1;
      });
      roundOff(strip, rimPixels, 0.8);
      roundOff(strip, rimPixels, 0.5);
    },
    paint({ strip }) {
      for (const { k, d, unit, down, x: px, y: py, c, s } of touched) {
        const n = gradient2(px / 1.4, py / 1.4, shape.seed + 12);
        const fine = gradient2(px / 0.5, py / 0.5, shape.seed + 13);
        const grit = gradient2(px / 0.19, py / 0.19, shape.seed + 30);
        const outer = (d - 1) * unit;
        // grey-blue scale, thickest on the rim, flaked off in patches
        const scale = between(
          between(TONES.blue, TONES.skin, 0.5),
          between(TONES.oxide, TONES.skin, clamp(0.5 + fine, 0, 1)),
          clamp(0.55 + 0.9 * n, 0, 1),
        );
        const cover = ease(2, 0.2, outer + 1.1 * n + 0.5 * fine) * ease(-0.75, -0.1, n + 0.6 * fine + 0.45);
        mixMaterial(strip, k, scale, 0.68 + 0.15 * fine, 0.25, 0.78 * cover * (1 - 0.5 * ease(0.25, 0.6, grit)));
        if (down > 0.02) {
          const streak = gradient2(3.2 * c + 4, 3.2 * s + 4, shape.seed + 31) + 0.5 * fine;
          const wall = between(
            scaled(between(TONES.blue, TONES.wall, 0.6), 1.5),
            scaled(TONES.wall, 2.1),
            clamp(0.5 + streak, 0, 1),
          );
          mixMaterial(strip, k, wall, 0.6, 0.4, 0.8 * ease(0.02, 0.14, down));
          mixMaterial(strip, k, TONES.rust, 0.85, 0.05, 0.3 * ease(0.05, 0.2, down) * ease(0.1, 0.5, n + 0.5 * fine));
          mixMaterial(strip, k, TONES.soot, 0.85, 0.05, 0.25 * ease(0.6, 0.98, down) * ease(-0.3, 0.3, fine - n));
        }
        const torn =
          ease(0.16, 0.03, Math.abs(outer - 0.04)) * ease(0, 0.5, gradient2(px / 0.7, py / 0.7, shape.seed + 32));
        mixMaterial(strip, k, TONES.meltedMetal, 0.4, 0.7, 0.35 * torn);
        strip.brush[k] *= 1 - ease(1.7, 1.2, d);
      }
    },
    measure: (work) => measuredPit(work, request.id, "burn-through", { x, y, reach: 1.45 * farthest }),
  };
};
