import { clamp, ease, hypot, mix } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient2, sampleAt } from "../../surface";
import { mixMaterial } from "../field";
import { toeAt } from "../runs/edit";
import type { FaceWork, Feature, FeatureBuilder, FeatureRequest } from "../work";
import { measuredBumps } from "./measured-bumps";
import { between, scaled, TONES } from "./tones";

/** One grain of tungsten: middle along from the start of the group, distance outside the toe, mm. */
interface Grain {
  readonly x: number;
  readonly out: number;
  readonly radius: number;
  readonly stretch: number;
  readonly turn: number;
  readonly rise: number;
  readonly seed: number;
}

/** Three to twelve grains thrown one way from where the electrode touched: the largest lie near, the finest fly furthest. */
function drawGrains(random: RandomStream, length: number, largest: number): Grain[] {
  const count = 3 + Math.min(9, Math.round(length * random.uniform(0.4, 0.9)));
  const heading = random.pick([1, -1]);
  const lean = random.uniform(0.15, 0.75);
  return Array.from({ length: count }, (_, n) => {
    const flown = n === 0 ? 0 : n === 1 ? 1 : random.uniform(0, 1) ** 1.3;
    const radius = (largest / 2) * (n === 0 ? 1 : clamp(random.logNormal(0.55 - 0.2 * flown, 0.35), 0.28, 0.95));
    return {
      x: heading > 0 ? radius + flown * (length - 2 * radius) : length - radius - flown * (length - 2 * radius),
      out:
        0.9 +
        radius +
        1.2 * random.uniform(0, 1) +
        lean * flown * Math.min(length, 9) +
        Math.abs(random.normal(0, 0.5)),
      radius,
      stretch: random.uniform(1, 1.7),
      turn: random.uniform(0, Math.PI),
      rise: random.uniform(0.55, 1),
      seed: random.seed(),
    };
  });
}

const RING = 4.5;
/** What stands this far above the plate is a grain; grains up to this far apart belong to one group, mm. */
const GRAIN_FROM = 0.05;
const BRIDGE = 5;

/** Sets one grain: an angular bright bead, sunk a little, a bluish ring where it burnt in. */
function setGrain({ strip }: FaceWork, grain: Grain, x0: number, y0: number): void {
  const { radius, stretch, seed } = grain;
  const level = sampleAt(strip.grid, strip.z, x0, y0);
  const c = Math.cos(grain.turn);
  const s = Math.sin(grain.turn);
  const reach = radius * RING;
  // fine grains burn in without much colour, and their shine is lost in the plate's
  const hot = ease(0.08, 0.42, radius);
  forEachPixel(strip.grid, { x0: x0 - reach, x1: x0 + reach, y0: y0 - reach, y1: y0 + reach }, (k, x, y) => {
    const dx = x - x0;
    const dy = y - y0;
    const angular = 1 + 0.26 * gradient2((0.9 * dx) / radius, (0.9 * dy) / radius, seed);
    const d = (hypot((dx * c + dy * s) / stretch, dy * c - dx * s) / radius) * angular;
    const haze = d * (1 + 0.3 * gradient2(dx / radius / 1.6, dy / radius / 1.6, seed + 1));
    if (haze < RING && d >= 1) {
      mixMaterial(strip, k, TONES.straw, 0.44, 0.6, 0.32 * hot * ease(RING, 3.1, haze) * ease(2.1, 3, haze));
      const blue = between(TONES.blue, [0.05, 0.09, 0.22], 0.25);
      mixMaterial(strip, k, blue, 0.4, 0.55, 0.42 * hot * ease(3.1, 1.6, haze) * ease(0.9, 1.2, haze));
    }
    if (d >= 1) {
      // the plate rose a little where it took the grain up
      if (d < 1.4) strip.z[k] += 0.1 * radius * grain.rise * (1.4 - d);
      return;
    }
    const facet = gradient2((1.6 * dx) / radius, (1.6 * dy) / radius, seed + 2);
    strip.z[k] = Math.max(strip.z[k], level + radius * grain.rise * (1 - d * d) ** 0.5 * (1 + 0.2 * facet));
    mixMaterial(
      strip,
      k,
      scaled(TONES.cutMetal, mix(0.7, 1, hot) + 0.16 * facet),
      mix(0.36, 0.27, hot),
      0.92,
      mix(0.6, 0.95, hot) * ease(1, 0.7, d),
    );
    strip.brush[k] *= 0.2;
  });
}

/**
 * Grains of tungsten burnt into the plate beside the toe from `x` over `length` mm; `severity` is the largest grain's
 * diameter, mm (0.3 to 1). Truth: what stands 0.05 mm or more above the plate's line there, grains up to 5 mm apart taken
 * together; width = extent across; no size.
 */
export const tungstenSpatter: FeatureBuilder = (request: FeatureRequest, random): Feature => {
  const length = Math.max(2, request.length);
  const grains = drawGrains(random.child("grains"), length, request.severity > 0 ? request.severity : 0.6);
  return {
    id: request.id,
    paint(work) {
      for (const grain of grains) {
        const x = request.x + grain.x;
        setGrain(work, grain, x, toeAt(work, request.side, x, 0.6) + request.side * grain.out);
      }
    },
    measure: (work) =>
      measuredBumps(work, request.id, "tungsten-spatter", {
        side: request.side,
        range: { from: request.x - 2, to: request.x + length + 2 },
        rise: GRAIN_FROM,
        bridge: BRIDGE,
      }),
  };
};
