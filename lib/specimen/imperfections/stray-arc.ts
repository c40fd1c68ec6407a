import { clamp, ease, hypot, mix } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient2 } from "../../surface";
import { type Field, mixColour, mixMaterial } from "../field";
import { placeGlobule } from "../plate";
import type { Feature, FeatureBuilder, FeatureRequest } from "../work";
import { drawArc, type Spot, spotDistance, type Touch } from "./arc-spots";
import { besideWeld } from "./beside-weld";
import { cutGasHole, drawGasHole, type GasHole, type HoleTrace, paintGasHole } from "./gas-hole";
import { measuredDepression } from "./measured-mark";
import { TONES } from "./tones";

const RIM = 0.075;
/** Globules stay this near to the centreline, so that they lie on the fine strip, mm. */
const FARTHEST_GLOBULE = 25;

const around = (spot: Spot, reach: number) => ({
  x0: spot.x - reach,
  x1: spot.x + reach,
  y0: spot.y - reach,
  y1: spot.y + reach,
});

/** Melts one spot into the plate: a dish with frozen rings about where it set last, and a rim pushed up to one side. */
function meltSpot(field: Field, spot: Spot, seed: number): void {
  const small = Math.min(1, spot.radius / 0.6);
  const last = {
    x: spot.x + 0.3 * spot.radius * Math.cos(spot.turn),
    y: spot.y + 0.3 * spot.radius * Math.sin(spot.turn),
  };
  forEachPixel(field.grid, around(spot, 2.2 * spot.radius), (k, x, y) => {
    const d = spotDistance(spot, seed, x, y);
    if (d >= 1.6) return;
    const ahead = ((x - spot.x) * Math.cos(spot.turn) + (y - spot.y) * Math.sin(spot.turn)) / spot.radius;
    const uneven = clamp(0.6 + 0.45 * ahead + 0.7 * gradient2(x / 0.8, y / 0.8, seed + 2), 0, 1.4);
    const rim = uneven * Math.exp(-(((d - 1.1) / 0.2) ** 2));
    field.z[k] += Math.min(RIM, 0.2 * spot.depth) * small * rim - spot.depth * Math.max(0, 1 - d * d) ** 0.95;
    if (d < 1) {
      const r = hypot(x - last.x, y - last.y);
      const rings = Math.cos(r * 15 + 3 * gradient2(x / 1.1, y / 1.1, seed + 5));
      field.z[k] += 0.01 * small * rings * (1 - d) + 0.006 * small * gradient2(x / 0.3, y / 0.3, seed + 3);
    }
    field.clean[k] = 1;
  });
}

interface Heated {
  readonly distance: number;
  readonly radius: number;
  readonly x: number;
  readonly y: number;
  /** From the spot's middle. */
  readonly dx: number;
  readonly dy: number;
}

/** Heat reaches this many radii, of a radius of at most `widest` mm. */
const HEAT = { reach: 6, widest: 1.4 };

/** How the oxide round one arc came out: no two touches last equally long. */
interface Halo {
  /** Strength, about 0.25..1.1, and how far it reaches, 1 usual. */
  readonly strength: number;
  readonly spread: number;
  readonly soot: number;
  /** Where the plume drifted, in radii. */
  readonly driftX: number;
  readonly driftY: number;
}

function drawHalo(random: RandomStream, touch: Touch, depth: number): Halo {
  const brief = touch === "pool" || touch === "pit" ? 1 : 0.8;
  return {
    strength: brief * random.uniform(0.5, 1.1) * mix(0.85, 1.25, ease(0.15, 0.45, depth)),
    spread: random.uniform(0.75, 1.35),
    soot: random.uniform(0.15, 0.7),
    driftX: random.normal(0, 0.35),
    driftY: random.normal(0, 0.35),
  };
}

/** Pixels near the spots, each with its distance from the nearest one: 1 at its edge. */
function heatedPixels(field: Field, spots: readonly Spot[], seed: number): Map<number, Heated> {
  const heated = new Map<number, Heated>();
  for (const spot of spots) {
    const narrowed = Math.min(1, HEAT.widest / spot.radius);
    forEachPixel(field.grid, around(spot, spot.radius * (1 + HEAT.reach * narrowed)), (k, x, y) => {
      const raw = spotDistance(spot, seed, x, y);
      const distance = raw < 1 ? raw : 1 + (raw - 1) / narrowed;
      const old = heated.get(k);
      if (distance < HEAT.reach && (!old || distance < old.distance))
        heated.set(k, { distance, radius: spot.radius, x, y, dx: x - spot.x, dy: y - spot.y });
    });
  }
  return heated;
}

/** Bright melted middle, dull oxide at its edge, then brown, straw and a breath of blue: weak and patchy. */
function paintHeat(field: Field, spots: readonly Spot[], seed: number, halo: Halo): void {
  const { strength, spread, driftX, driftY } = halo;
  for (const [k, { distance, radius, x, y, dx, dy }] of heatedPixels(field, spots, seed)) {
    const patch = gradient2(x / 2.2, y / 2.2, seed + 7);
    const fine = gradient2(x / 0.6, y / 0.6, seed + 8);
    const reach = Math.min(1, radius / 0.9);
    const drifted = distance > 1 ? -(driftX * dx + driftY * dy) / (radius * distance) : 0;
    const d = 1 + (distance - 1) / spread + drifted + 0.5 * patch + 0.18 * fine;
    // mill scale hides what colours the steel below it
    const shown = strength * reach * mix(0.2, 1, field.band[k]);
    mixColour(field, k, TONES.straw, 0.36 * shown * ease(5, 3, d) * ease(1.8, 2.8, d));
    mixMaterial(field, k, TONES.blue, 0.46, 0.4, 0.42 * shown * ease(3.4, 2.4, d) * ease(1.3, 2, d));
    mixMaterial(field, k, TONES.brown, 0.52, 0.25, 0.6 * mix(0.5, 1, reach) * strength * ease(2.4, 1.3, d));
    mixMaterial(
      field,
      k,
      TONES.soot,
      0.6,
      0.1,
      0.6 * halo.soot * reach * ease(1.9, 0.9, distance) * ease(0.5, 1, distance) * clamp(0.6 + fine, 0.1, 1),
    );
    if (distance < 1.02) {
      const bright = ease(1.02, 0.7, distance) * clamp(0.6 + 0.5 * patch + 0.5 * fine, 0.1, 1);
      mixMaterial(field, k, TONES.meltedMetal, 0.36, 0.7, 0.5 * reach * bright);
    }
    if (distance < 1.5) field.brush[k] *= 0.15;
  }
}

/**
 * An arc struck on the plate beside the weld: a burnt pool, a skid, a single pit or a string of them from `x` over `length`
 * mm, `severity` mm deep (0.15 to 0.55), with a blowhole, globules and oxide as it happened. Truth: from the first to the
 * last place that lies 0.08 mm or more below the plane of the plate round it; width across likewise; no size.
 */
export const strayArc: FeatureBuilder = (request: FeatureRequest, random): Feature => {
  const length = Math.max(3, request.length);
  const depth = request.severity > 0 ? request.severity : 0.35;
  const drawn = drawArc(random.child("spots"), length, depth);
  const halo = drawHalo(random.child("halo"), drawn.touch, depth);
  const middle = request.x + length / 2;
  let spots: readonly Spot[] = [];
  const holes: { hole: GasHole; trace: HoleTrace }[] = [];
  return {
    id: request.id,
    cut(work) {
      const half = Math.max(...drawn.spots.map((s) => Math.abs(s.y) + s.radius));
      const across = besideWeld(work, request, middle, half, 1.2);
      spots = drawn.spots.map((s) => ({ ...s, x: s.x + middle, y: s.y + across }));
      for (const spot of spots) meltSpot(work.strip, spot, drawn.seed);
      const blowholes = random.child("blowholes");
      const gassy = spots.filter((spot) => spot.radius > 0.5);
      // two alike side by side would look like eyes
      const count = gassy.length > 0 && blowholes.chance(0.22) ? 1 : 0;
      for (let n = 0; n < count; n++) {
        const spot = gassy[n];
        const angle = blowholes.uniform(0, 6.28);
        const away = blowholes.uniform(0.3, 0.7) * spot.radius;
        const x = spot.x + away * Math.cos(angle);
        const y = spot.y + away * Math.sin(angle);
        const hole = drawGasHole(blowholes.child(`${n}`), x, y, blowholes.uniform(0.2, 0.42), { open: true });
        holes.push({ hole, trace: cutGasHole(work.strip, hole) });
      }
    },
    paint(work) {
      for (const field of [work.strip, ...work.sides]) paintHeat(field, spots, drawn.seed, halo);
      for (const { hole, trace: cut } of holes) paintGasHole(work.strip, hole, cut);
      const globules = random.child("globules");
      const count = globules.integer(drawn.touch === "pool" ? 11 : 5);
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
