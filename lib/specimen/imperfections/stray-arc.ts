import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient2 } from "../../surface";
import { type Field, mixColour, mixMaterial } from "../field";
import { placeGlobule } from "../plate";
import type { Feature, FeatureBuilder, FeatureRequest } from "../work";
import { besideWeld } from "./beside-weld";
import { cutGasHole, drawGasHole, type GasHole, type HoleTrace, paintGasHole } from "./gas-hole";
import { measuredDepression } from "./measured-mark";
import { scaled, TONES } from "./tones";

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly stretch: number;
  readonly turn: number;
  readonly depth: number;
}

interface StrayArc {
  /** About (0, 0). */
  readonly spots: readonly Spot[];
  readonly seed: number;
}

/** Two or three melted spots that overlap, then a trail of small ones where the electrode skidded off. */
function drawArc(random: RandomStream, length: number, depth: number): StrayArc {
  const heading = random.uniform(-0.6, 0.6) + (random.chance(0.5) ? Math.PI : 0);
  const pools = 2 + random.integer(2);
  const trail = 2 + random.integer(4);
  const spots: Spot[] = [];
  let x = 0;
  let y = 0;
  for (let n = 0; n < pools + trail; n++) {
    const isPool = n < pools;
    const radius = isPool ? length * random.uniform(0.17, 0.25) * (1 - 0.16 * n) : random.uniform(0.16, 0.42);
    spots.push({
      x,
      y,
      radius,
      stretch: random.uniform(1.05, 1.6),
      turn: heading + random.normal(0, 0.4),
      depth: depth * (isPool ? random.uniform(0.75, 1.05) : random.uniform(0.4, 0.7)),
    });
    const step =
      isPool && n + 1 < pools ? radius * random.uniform(0.8, 1.3) : length * random.uniform(0.07, 0.15) + radius;
    x += step * Math.cos(heading) + random.normal(0, 0.18);
    y += step * Math.sin(heading) + random.normal(0, 0.18);
  }
  return { spots: fitted(spots, length), seed: random.seed() };
}

/** Scales distances along the weld so that the string of spots is as long as asked, its middle at 0. */
function fitted(spots: readonly Spot[], length: number): Spot[] {
  const low = Math.min(...spots.map((s) => s.x - s.radius));
  const high = Math.max(...spots.map((s) => s.x + s.radius));
  const stretch = clamp(length / (high - low), 0.7, 1.6);
  const middleY = spots.reduce((sum, s) => sum + s.y, 0) / spots.length;
  return spots.map((s) => ({ ...s, x: (s.x - (low + high) / 2) * stretch, y: s.y - middleY }));
}

/** Distance from a spot's middle in its radii, its outline uneven. */
function spotDistance(spot: Spot, seed: number, x: number, y: number): number {
  const dx = x - spot.x;
  const dy = y - spot.y;
  const c = Math.cos(spot.turn);
  const s = Math.sin(spot.turn);
  const along = (dx * c + dy * s) / Math.sqrt(spot.stretch);
  const across = (-dx * s + dy * c) * Math.sqrt(spot.stretch);
  const coarse = 0.2 * gradient2(x / (0.9 * spot.radius), y / (0.9 * spot.radius), seed);
  return (Math.hypot(along, across) / spot.radius) * (1 + coarse + 0.1 * gradient2(x / 0.5, y / 0.5, seed + 1));
}

const RIM = 0.075;

/** Melts one spot into the plate: a dish with frozen rings and an uneven rim. */
function meltSpot(
  field: Field,
  spot: Spot,
  seed: number,
  trace: Map<number, [distance: number, radius: number]>,
): void {
  const reach = spot.radius * 7;
  const small = Math.min(1, spot.radius / 0.6);
  forEachPixel(
    field.grid,
    { x0: spot.x - reach, x1: spot.x + reach, y0: spot.y - reach, y1: spot.y + reach },
    (k, x, y) => {
      const d = spotDistance(spot, seed, x, y);
      if (d < 1.5) {
        const dish = Math.max(0, 1 - d * d) ** 0.8;
        const rim =
          Math.exp(-(((d - 1.08) / 0.18) ** 2)) * clamp(0.7 + 0.9 * gradient2(x / 0.8, y / 0.8, seed + 2), 0, 1.4);
        field.z[k] += RIM * small * rim - spot.depth * dish;
        if (d < 1) {
          const rings = Math.cos(d * 15 + 2 * gradient2(x / 1.1, y / 1.1, seed + 5));
          field.z[k] += 0.018 * small * rings * (1 - d) + 0.02 * gradient2(x / 0.3, y / 0.3, seed + 3);
        }
        field.clean[k] = 1;
      }
      const old = trace.get(k);
      if (d < 6 && (!old || d < old[0])) trace.set(k, [d, spot.radius]);
    },
  );
}

/** Bright melted middle, dull oxide at its edge, then brown, straw and a breath of blue: weak and patchy. */
function paintHeat(field: Field, trace: ReadonlyMap<number, [number, number]>, seed: number): void {
  const { columns } = field.grid;
  for (const [k, [distance, radius]] of trace) {
    const i = k % columns;
    const j = (k - i) / columns;
    const patch = gradient2(i / 18, j / 18, seed + 7);
    const fine = gradient2(i / 5, j / 5, seed + 8);
    const reach = Math.min(1, radius / 0.8);
    const d = distance + 0.5 * patch + 0.18 * fine;
    mixColour(field, k, TONES.straw, 0.28 * reach * ease(5, 3, d) * ease(1.8, 2.8, d));
    mixMaterial(field, k, TONES.blue, 0.46, 0.4, 0.42 * reach * ease(3.4, 2.4, d) * ease(1.3, 2, d));
    mixMaterial(field, k, TONES.brown, 0.52, 0.25, 0.62 * ease(2.4, 1.3, d));
    mixMaterial(field, k, TONES.soot, 0.6, 0.1, 0.6 * ease(1.5, 1.12, distance) * clamp(0.6 + fine, 0.1, 1));
    if (distance < 1.02) {
      const bright = ease(1.02, 0.85, distance) * clamp(0.7 + 0.5 * patch + 0.5 * fine, 0.15, 1);
      mixMaterial(field, k, scaled(TONES.meltedMetal, 1.1), 0.3, 0.75, 0.8 * bright);
    }
    if (distance < 1.5) field.brush[k] *= 0.15;
  }
}

/**
 * An arc struck on the plate beside the weld: melted pits from `x` over `length` mm, `severity` mm deep (0.2 to 0.6), with
 * a trail, blowholes, a few globules and an oxide ring. Truth: from the first to the last place that lies 0.08 mm or
 * more below the plane of the plate round it; width across likewise; no size.
 */
export const strayArc: FeatureBuilder = (request: FeatureRequest, random): Feature => {
  const length = Math.max(3, request.length);
  const depth = request.severity > 0 ? request.severity : 0.35;
  const drawn = drawArc(random.child("spots"), length, depth);
  const middle = request.x + length / 2;
  let spots: readonly Spot[] = [];
  const trace = new Map<number, [number, number]>();
  const holes: { hole: GasHole; trace: HoleTrace }[] = [];
  return {
    id: request.id,
    cut(work) {
      const half = Math.max(...drawn.spots.map((s) => Math.abs(s.y) + s.radius));
      const across = besideWeld(work, request, middle, half, 1.2);
      spots = drawn.spots.map((s) => ({ ...s, x: s.x + middle, y: s.y + across }));
      for (const spot of spots) meltSpot(work.strip, spot, drawn.seed, trace);
      const blowholes = random.child("blowholes");
      for (let n = 0; n < 3; n++) {
        const spot = spots[n % 2];
        const angle = blowholes.uniform(0, 6.28);
        const away = blowholes.uniform(0, 0.65) * spot.radius;
        const x = spot.x + away * Math.cos(angle);
        const y = spot.y + away * Math.sin(angle);
        const hole = drawGasHole(blowholes.child(`${n}`), x, y, blowholes.uniform(0.2, 0.42), { open: true });
        holes.push({ hole, trace: cutGasHole(work.strip, hole) });
      }
    },
    paint(work) {
      paintHeat(work.strip, trace, drawn.seed);
      for (const { hole, trace: cut } of holes) paintGasHole(work.strip, hole, cut);
      const globules = random.child("globules");
      const count = 6 + globules.integer(6);
      for (let n = 0; n < count; n++) {
        const angle = globules.uniform(0, 6.28);
        const away = length * Math.abs(globules.normal(0.4, 0.3));
        const radius = clamp(globules.logNormal(0.13, 0.35), 0.07, 0.3);
        const y = spots[0].y + 0.7 * away * Math.sin(angle);
        if (Math.abs(y) < FARTHEST_GLOBULE)
          placeGlobule(work, { x: middle + away * Math.cos(angle), y, radius }, globules.child(`${n}`));
      }
    },
    measure: (work) => {
      if (!spots.length) return null;
      const reach = Math.max(...spots.map((s) => s.radius));
      return measuredDepression(work, request.id, "stray-arc", {
        x0: Math.min(...spots.map((s) => s.x)) - 2 * reach,
        x1: Math.max(...spots.map((s) => s.x)) + 2 * reach,
        y0: Math.min(...spots.map((s) => s.y)) - 2 * reach,
        y1: Math.max(...spots.map((s) => s.y)) + 2 * reach,
      });
    },
  };
};

const FARTHEST_GLOBULE = 25;
