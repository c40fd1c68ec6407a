import { clamp, ease, mix } from "../../math";
import type { RandomStream } from "../../random";
import { columnX, forEachPixel, gradient1, gradient2, sampleAt } from "../../surface";
import { mixMaterial } from "../field";
import { levelBetweenPlates } from "../runs/groove";
import type { FaceWork, Feature, FeatureBuilder } from "../work";
import { measuredPit } from "./measured-pit";
import { roundOff } from "./round-off";
import { between, scaled, TONES } from "./tones";

/** How the melt left: all of it, all but a skin that froze over a part of the hole, or hardly at all; a keyhole ran out to a slot. */
type Manner = "open" | "half-closed" | "sagged" | "keyhole";

/** A drop of melt that froze on the rim: where, from the middle, and its radius; mm. */
interface Bead {
  readonly dx: number;
  readonly dy: number;
  readonly radius: number;
}

interface Shape {
  readonly manner: Manner;
  readonly radiusX: number;
  readonly radiusY: number;
  /** Turn of the oval, radians. */
  readonly turn: number;
  /** Which way the slot of a keyhole runs along the weld. */
  readonly slot: 1 | -1;
  /** Floor below the plates, mm. */
  readonly deep: number;
  /** Height of the rim that ran together, mm, and where most of it went, radians. */
  readonly lip: number;
  readonly heavyAt: number;
  /** The skin over a half-closed hole: from which side, radians, and how far in towards the middle (share of the radius). */
  readonly skinAt: number;
  readonly skinReach: number;
  readonly seed: number;
}

const MANNERS: readonly Manner[] = ["open", "half-closed", "half-closed", "sagged", "keyhole", "keyhole"];
/** A slot reaches so many radii out from the middle and is so wide where it begins, radii. */
const SLOT = { reach: 1.75, wide: 0.5 };

/** Drops on the outline, found by going out from the middle until it is reached. */
function drawBeads(random: RandomStream, shape: Shape): Bead[] {
  const farthest = Math.max(shape.radiusX, shape.radiusY);
  const size = clamp(farthest / 2.6, 0.5, 1);
  const first = random.uniform(0, 2 * Math.PI);
  return Array.from({ length: 1 + random.integer(5) }, (_, n) => {
    const angle = first + n * random.uniform(0.25, 1.5);
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    let away = 0.2 * farthest;
    while (away < 3 * farthest && holeDistance(shape, away * c, away * s).d < 1) away += 0.06;
    away += random.uniform(-0.05, 0.22);
    return { dx: away * c, dy: away * s, radius: size * random.uniform(0.22, n === 0 ? 0.62 : 0.42) };
  });
}

function drawShape(random: RandomStream, severity: number): Shape {
  const across = EDGE_TO_HOLE * (severity > 0 ? severity : 6);
  const manner = random.pick(MANNERS);
  const isKeyhole = manner === "keyhole";
  const long = across / (isKeyhole ? 1 + SLOT.reach : 2);
  const short = long * (isKeyhole ? random.uniform(0.8, 1.05) : random.uniform(0.52, 0.95));
  const isAlong = isKeyhole || long > 2.6 || random.chance(0.6);
  const radiusX = isAlong ? long : short;
  const radiusY = isAlong ? short : long;
  return {
    manner,
    radiusX,
    radiusY,
    turn: random.normal(0, isKeyhole ? 0.08 : 0.25),
    slot: random.pick([1, -1]),
    deep: manner === "sagged" ? random.uniform(0.95, 1.5) : Math.min(2.3, random.uniform(0.85, 1.2) + 0.13 * across),
    lip: random.uniform(0.3, 0.95) * clamp(long / 2.5, 0.5, 1),
    heavyAt: random.uniform(0, 2 * Math.PI),
    skinAt: random.uniform(0, 2 * Math.PI),
    skinReach: random.uniform(0.45, 1.05),
    seed: random.seed(),
  };
}

/** Distance from the middle in units of the hole's torn outline, and the direction there. */
function holeDistance(shape: Shape, dx: number, dy: number): { d: number; c: number; s: number } {
  const { seed } = shape;
  const slow = Math.min(shape.radiusX, shape.radiusY);
  const torn = (at: number) =>
    0.3 * slow * gradient2(dx / (0.95 * slow), dy / (0.95 * slow), seed + at) +
    0.13 * gradient2(dx / 0.75, dy / 0.75, seed + at + 1) +
    0.05 * gradient2(dx / 0.3, dy / 0.3, seed + at + 2);
  const wx = dx + torn(20);
  const wy = dy + torn(25);
  const turnC = Math.cos(shape.turn);
  const turnS = Math.sin(shape.turn);
  const u = (wx * turnC + wy * turnS) / shape.radiusX;
  const v = (-wx * turnS + wy * turnC) / shape.radiusY;
  const r = Math.hypot(u, v) || 1e-6;
  return { d: shape.manner === "keyhole" ? withSlot(shape, r, u, v) : r, c: u / r, s: v / r };
}

/** The oval and the slot that tapers away from it, run into one outline. */
function withSlot(shape: Shape, r: number, u: number, v: number): number {
  const p = u * shape.slot;
  const wide = SLOT.wide * (0.25 + 0.75 * ease(SLOT.reach, 0.5, p));
  const slot = Math.max(Math.abs(v) / wide, p / SLOT.reach, -p / 0.6);
  const soft = 7;
  return Math.max(0, -Math.log(Math.exp(-soft * r) + Math.exp(-soft * slot)) / soft);
}

/** How far a skin of metal froze over the hole at a place, 0..1, and the distance from its rounded, uneven edge, radii. */
function skinOver(shape: Shape, d: number, c: number, s: number, dx: number, dy: number): { over: number; in: number } {
  if (shape.manner !== "half-closed") return { over: 0, in: 0 };
  const towards = c * Math.cos(shape.skinAt) + s * Math.sin(shape.skinAt);
  const edge =
    1 -
    shape.skinReach +
    0.24 * gradient2(dx / 1.4, dy / 1.4, shape.seed + 7) +
    0.07 * gradient2(dx / 0.45, dy / 0.45, shape.seed + 14);
  const inside = towards * d + 0.12 * (1 - d) - edge;
  return { over: ease(-0.05, 0.07, inside), in: inside };
}

/**
 * Height inside the hole between the rim's level and the floor: a rolled edge, a wall now steep, now a slope with runnels, a
 * floor of lumps and the crescents of the pass above, perhaps a skin over a part.
 */
function heightInside(shape: Shape, d: number, dx: number, dy: number, c: number, s: number, at: Levels): number {
  const { seed } = shape;
  const steep = clamp(0.5 + 1.1 * gradient2(1.1 * c + 3, 1.1 * s + 3, seed + 6), 0, 1);
  const runnel =
    0.22 * gradient2(3.1 * c + 11, 3.1 * s + 11, seed + 15) + 0.1 * gradient2(dx / 0.4, dy / 0.4, seed + 16);
  const wall = shape.manner === "sagged" ? mix(1.6, 0.8, steep) : mix(1.7, 0.5, steep);
  const inward = (1 - d) * Math.min(shape.radiusX, shape.radiusY);
  const fall = clamp(
    inward / Math.min(wall, 0.8 * Math.min(shape.radiusX, shape.radiusY)) + runnel * ease(0, 0.3, inward),
    0,
    1,
  );
  const profile = fall < 0.4 ? (fall * fall) / 0.4 : 1 - (1 - fall) ** 2 / 0.6;
  const lumps =
    0.24 * gradient2(dx / 1.2, dy / 0.9, seed + 8) +
    0.1 * gradient2(dx / 0.45, dy / 0.45, seed + 9) +
    0.16 * gradient1((dx + 0.3 * dy * dy + 0.5 * gradient2(dx / 1.1, dy / 1.1, seed + 17)) / 0.75, seed + 18);
  const floor = at.plates - shape.deep + lumps * (shape.manner === "sagged" ? 0.55 : 1);
  const bare = mix(at.rim, Math.min(floor, at.rim), profile);
  const skin = skinOver(shape, d, c, s, dx, dy);
  if (skin.over <= 0) return bare;
  // it hangs a little below the plates, wrinkled along its edge, which drew itself round
  const wrinkles =
    0.07 * gradient1((skin.in + 0.2 * gradient2(dx / 0.9, dy / 0.9, seed + 10)) / 0.16, seed + 19) +
    0.14 * gradient2(dx / 0.9, dy / 0.9, seed + 11);
  const rolled = 0.16 * Math.exp(-(((skin.in - 0.1) / 0.09) ** 2));
  const hung = at.plates - SKIN_BELOW - 0.25 * (1 - d) + wrinkles + rolled;
  return mix(bare, Math.min(mix(at.rim, hung, profile), Math.max(bare, hung)), skin.over);
}

/** Levels in mm: of the rim, carried over the hole, and of the plates. */
interface Levels {
  readonly rim: number;
  readonly plates: number;
}

/** Metal that ran down and froze round the hole: a rolled lip, heavy on one side, torn away on the other, drooping in lobes. */
function sag(shape: Shape, d: number, dx: number, dy: number, c: number, s: number): number {
  const { seed } = shape;
  const towards = c * Math.cos(shape.heavyAt) + s * Math.sin(shape.heavyAt);
  const heavy = 0.45 + 0.45 * towards + 0.9 * gradient2(1.6 * c + 7, 1.6 * s + 7, seed + 3);
  const lobe = 0.65 * gradient2(dx / 1.3, dy / 1.3, seed + 4) + 0.14 * gradient2(dx / 0.6, dy / 0.6, seed + 5);
  const beyond = (d - 1.1) * Math.min(shape.radiusX, shape.radiusY);
  const width = beyond < 0 ? 0.28 : 0.45 + 0.6 * clamp(towards + 0.5 * lobe, 0, 1);
  return shape.lip * clamp(heavy + lobe, -0.25, 1.4) * Math.exp(-((beyond / width) ** 2));
}

/** Raises the drops that hang on the rim over a height. */
function withBeads(shape: Shape, beads: readonly Bead[], dx: number, dy: number, rim: number, height: number): number {
  let z = height;
  beads.forEach((bead, n) => {
    const away =
      Math.hypot(dx - bead.dx, dy - bead.dy) /
      (bead.radius * (1 + 0.3 * gradient2(dx / 0.6, dy / 0.6, shape.seed + 40 + n)));
    if (away >= 1.6) return;
    const drop = rim + bead.radius * (0.15 + 0.95 * Math.sqrt(Math.max(0, 1 - away * away)));
    if (away < 1) z = Math.max(z, drop);
    // a hollow neck where it grew from
    else z = mix(z, Math.min(z, rim - 0.04), 0.5 * ease(1.5, 1.05, away));
  });
  return z;
}

/** The run thins and draws in before the hole, closes round it, and starts again swollen behind it. */
function disturbRun(work: FaceWork, x: number, shape: Shape): void {
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

/** The outline is this much longer than what lies 0.6 mm below the plates. */
const EDGE_TO_HOLE = 1.2;
/** A skin of metal over a part of the hole hangs this far below the plates, mm. */
const SKIN_BELOW = 0.85;
const FUSED_BEYOND = 0.5;
const RING = 16;

interface Touched {
  readonly k: number;
  readonly d: number;
  readonly down: number;
  readonly x: number;
  readonly y: number;
  readonly c: number;
  readonly s: number;
}

/**
 * Hole burnt through the root run about `x`, `severity` mm across where it is widest (2.4 to 8): round or oblong, open, a
 * keyhole with its slot, half closed by a wrinkled skin, or sagged to a pit; a torn, scaled rim that drooped on one side, with
 * drops on it. Truth: a point at the middle of what lies 0.6 mm or more below the plates; width = the larger of its two
 * extents; no size.
 */
export const burnThrough: FeatureBuilder = (request, random): Feature => {
  const draw = random.child("shape");
  const shape = drawShape(draw, request.severity);
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
      const before = strip.z.slice();
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
        const { d, c, s } = holeDistance(shape, dx, dy);
        if (d > 2.4) return;
        const weld = clamp(strip.bead[k] + ease(1.3, 0.95, d), 0, 1);
        // inside, ripples end at the edge and the level goes over into that of the whole rim
        const rim = mix(before[k], middle, ease(1.02, 0.7, d)) + sag(shape, d, dx, dy, c, s) * weld;
        const inside = d < 1 ? heightInside(shape, d, dx, dy, c, s, { rim, plates }) : rim;
        strip.z[k] = withBeads(shape, beads, dx, dy, mix(before[k], middle, 0.5), inside);
        touched.push({
          k,
          d,
          down: clamp((rim - strip.z[k]) / (rim - plates + shape.deep), 0, 1),
          x: px,
          y: py,
          c,
          s,
        });
        if (d > 0.72 && d < 1.2) rimPixels.push(k);
        if (d < 1.7) strip.clean[k] = 1;
      });
      roundOff(strip, rimPixels, 0.8);
      roundOff(strip, rimPixels, 0.5);
    },
    paint({ strip }) {
      for (const { k, d, down, x: px, y: py, c, s } of touched) {
        const n = gradient2(px / 1.4, py / 1.4, shape.seed + 12);
        const fine = gradient2(px / 0.5, py / 0.5, shape.seed + 13);
        const grit = gradient2(px / 0.19, py / 0.19, shape.seed + 30);
        const outer = (d - 1) * Math.min(shape.radiusX, shape.radiusY);
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
