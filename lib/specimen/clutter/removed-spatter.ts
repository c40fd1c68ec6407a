import { clamp, ease, hypot } from "../../math";
import type { RandomStream } from "../../random";
import { gradient2, value1 } from "../../surface";
import { mixColour, mixMaterial } from "../field";
import { scaled } from "../imperfections/tones";
import { boxAround, forEachPlatePixel } from "../plate/patches";
import { toeAt } from "../runs/edit";
import type { FaceWork, Feature, FeatureBuilder } from "../work";
import { clutterFrom, emptyFootprint, type Footprint, leaveTrace } from "./footprint";
import { CLUTTER_TONES as TONES } from "./tones";

/** The place where one globule sat; lengths in mm. */
interface Spot {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly stretch: number;
  readonly turn: number;
  /** How bare the break is: 0 a dark print in the scale, 1 bright torn steel. */
  readonly bare: number;
  /** Length of the scrape that the chisel left beside it, 0 for none. */
  readonly scrape: number;
  readonly seed: number;
}

/** The chisel came from one direction, about the same for all spots of a swarm. */
function drawSpots(
  random: RandomStream,
  work: FaceWork,
  from: number,
  length: number,
  side: 1 | -1,
  coarse: number,
): Spot[] {
  const count = 4 + random.integer(4) + Math.round(length / 6);
  const chisel = random.uniform(-0.5, 0.5);
  return Array.from({ length: count }, () => {
    const x = from + length * clamp(0.5 + random.normal(0, 0.24), 0, 1);
    const out = 0.9 + Math.abs(random.normal(0, 4.5));
    const radius = clamp(random.logNormal(0.4 * coarse, 0.55), 0.18, 1.05);
    return {
      x,
      y: toeAt(work, side, x, 1) + side * (out + radius),
      radius,
      stretch: random.uniform(1, 1.7),
      turn: chisel + random.normal(0, 0.2),
      bare: random.chance(0.6) ? random.uniform(0.65, 1) : random.uniform(0, 0.35),
      scrape: random.chance(0.4) ? random.uniform(1, 3.5) * radius : 0,
      seed: random.seed(),
    };
  });
}

/** What is left stands or lies no more than this off the plate, mm. */
const LEFT = 0.022;

function leaveSpot(work: FaceWork, spot: Spot, footprint: Footprint): void {
  const { radius, seed, bare } = spot;
  const c = Math.cos(spot.turn);
  const s = Math.sin(spot.turn);
  forEachPlatePixel(
    work,
    boxAround(spot.x, spot.y, Math.max(2.8 * radius, 1.5 * radius + spot.scrape)),
    (field, k, x, y) => {
      const along = (x - spot.x) * c + (y - spot.y) * s;
      const across = -(x - spot.x) * s + (y - spot.y) * c;
      const lobes =
        0.3 * gradient2(x / (1.2 * radius), y / (1.2 * radius), seed) + 0.1 * gradient2(x / 0.3, y / 0.3, seed + 1);
      const d = hypot(along / spot.stretch, across) / radius + lobes;
      const halo = ease(2.5, 0.7, d) ** 2 * clamp(0.4 + 0.9 * gradient2(x / 1.2, y / 1.2, seed + 2), 0, 1);
      mixColour(field, k, TONES.scorch, 0.34 * halo);
      mixColour(field, k, TONES.scorchBlue, 0.1 * halo * ease(1.2, 1.8, d));
      const tail = spot.scrape > 0 ? scrapeAt(spot, along, across) : 0;
      const core = ease(1.2, 0.7, d);
      if (core <= 0 && tail <= 0) return;
      // torn metal shows lines along the blow; a thin skin of the globule sticks in places
      const lines = 0.5 + 0.5 * value1(across / 0.14, seed + 3);
      const skin = ease(0.1, 0.5, 0.8 * gradient2(x / (1.3 * radius), y / (1.3 * radius), seed + 4) + 0.55 - bare);
      const bright = clamp(Math.max(core * (1 - skin), 0.75 * tail) * (0.75 + 0.3 * lines), 0, 1);
      mixMaterial(field, k, TONES.scorch, 0.62, 0.2, 0.6 * core * skin);
      mixMaterial(field, k, scaled(TONES.bareSteel, 0.78 + 0.3 * lines), 0.4, 0.72, 0.6 * bright);
      field.z[k] += LEFT * (core * (skin - 0.45 + 0.3 * (lines - 0.5)) - 0.4 * tail);
      field.brush[k] *= 1 - Math.max(core, tail);
      leaveTrace(footprint, field, x, y, Math.max(core, tail));
    },
  );
}

/** The chisel went on over the plate for a little. */
function scrapeAt({ radius, scrape, seed }: Spot, along: number, across: number): number {
  const reach = scrape * (0.75 + 0.3 * value1(across / 0.22, seed + 6));
  const beside = ease(0.75 * radius, 0.4 * radius, Math.abs(across));
  return along < 0
    ? 0
    : beside *
        ease(radius + reach, radius + 0.3 * reach, along) *
        ease(0.3, 0.65, 0.5 + 0.5 * value1(across / 0.16, seed + 7));
}

/**
 * Round spots where globules were chipped off, from `x` over `length` mm beside the weld: bright torn steel or dark prints,
 * flush with the plate; `severity` 0.6 to 1.4 their diameter in mm. They tempt to call pores.
 */
export const removedSpatter: FeatureBuilder = (request, random): Feature => {
  const footprint = emptyFootprint();
  return {
    id: request.id,
    paint(work) {
      const draw = random.child("spots");
      const coarse = clamp(request.severity / 0.9, 0.7, 1.5);
      const spots = drawSpots(draw, work, request.x, Math.max(6, request.length), request.side, coarse);
      for (const spot of spots) leaveSpot(work, spot, footprint);
    },
    clutter: (work) => clutterFrom(work, request.id, "removed-spatter", footprint),
  };
};
