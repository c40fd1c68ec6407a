import type { RandomStream } from "../../random";
import { forEachPixel, gradient2 } from "../../surface";
import type { Field } from "../field";
import type { Feature, FeatureBuilder } from "../work";
import { craterNear, leaveCraterOpen } from "./crater";
import { cutGasHole, drawGasHole, type GasHole, type HoleTrace, paintGasHole } from "./gas-hole";
import { measuredHole } from "./measured-hole";
import type { PoreSpot } from "./pore-group";

const DEEPEST = 2.6;

interface Funnel {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly depth: number;
  readonly seed: number;
}

/** Sinks the metal round a pipe towards its mouth, unevenly and off its middle. */
function sinkFunnel(field: Field, { x, y, radius, depth, seed }: Funnel): void {
  forEachPixel(field.grid, { x0: x - radius, x1: x + radius, y0: y - radius, y1: y + radius }, (k, px, py) => {
    const uneven = 1.1 + 0.35 * gradient2(px / 1.3, py / 1.3, seed);
    const d = (Math.hypot(px - x, py - y) / radius) * uneven;
    if (d < 1) field.z[k] -= depth * (1 - d * d) ** 2;
  });
}

/** Where small holes break through beside a pipe: none, one or two, on any side. */
function drawSatellites(random: RandomStream, x: number, y: number, radius: number): PoreSpot[] {
  const count = random.chance(0.45) ? 0 : 1 + random.integer(2);
  const first = random.uniform(0, 6.28);
  return Array.from({ length: count }, (_, n) => {
    const angle = first + n * random.uniform(0.7, 3);
    const away = radius * random.uniform(1.9, 2.8) + 0.15;
    return {
      x: x + away * Math.cos(angle),
      y: y + away * Math.sin(angle),
      diameter: Math.min(radius, random.uniform(0.26, 0.5)),
    };
  });
}

/**
 * Shrinkage pipe in the crater of an electrode's end at `x`, its mouth `severity` mm across, often with one or two
 * small holes beside it. Truth: size = mouth diameter of the finished hole below the crater's floor, place = middle of the mouth.
 */
export const craterPipe: FeatureBuilder = (request, random): Feature => {
  let pipe: GasHole | null = null;
  const holes: { hole: GasHole; trace: HoleTrace }[] = [];
  return {
    id: request.id,
    plan: (work) => leaveCraterOpen(work, request, random.child("stop")),
    cut(work) {
      const crater = craterNear(work, request);
      if (!crater) return;
      const place = random.child("place");
      const x = crater.x + place.normal(0, 0.16) * crater.radiusX;
      const y = crater.y + place.normal(0, 0.16) * crater.radiusY;
      const radius = request.severity / 2;
      sinkFunnel(work.strip, {
        x: x + place.normal(0, 0.4) * radius,
        y: y + place.normal(0, 0.4) * radius,
        radius: place.uniform(1.9, 3.4) * radius + 0.4,
        depth: place.uniform(0.08, 0.34),
        seed: place.seed(),
      });
      pipe = drawGasHole(random.child("pipe"), x, y, request.severity, {
        depth: Math.min(DEEPEST, 0.15 + radius * place.uniform(0.9, 2.1)),
        stretch: place.uniform(1.05, 1.6),
        open: true,
      });
      holes.push({ hole: pipe, trace: cutGasHole(work.strip, pipe) });
      drawSatellites(place, x, y, radius).forEach((spot, n) => {
        const small = drawGasHole(random.child(`satellite/${n}`), spot.x, spot.y, spot.diameter, { open: true });
        holes.push({ hole: small, trace: cutGasHole(work.strip, small) });
      });
    },
    paint(work) {
      for (const { hole, trace } of holes) paintGasHole(work.strip, hole, trace);
    },
    measure: (work) => (pipe ? measuredHole(work, request.id, "crater-pipe", pipe) : null),
  };
};
