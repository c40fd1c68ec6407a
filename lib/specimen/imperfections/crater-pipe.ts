import { forEachPixel, gradient2 } from "../../surface";
import type { Field } from "../field";
import type { Feature, FeatureBuilder } from "../work";
import { craterNear, leaveCraterOpen } from "./crater";
import { cutGasHole, drawGasHole, type GasHole, type HoleTrace, paintGasHole } from "./gas-hole";
import { measuredHole } from "./measured-hole";

const FUNNEL_DEPTH = 0.3;

/** Sinks the metal round a pipe towards its mouth, unevenly. */
function sinkFunnel(field: Field, x: number, y: number, radius: number, seed: number): void {
  const reach = 2.3 * radius;
  forEachPixel(field.grid, { x0: x - reach, x1: x + reach, y0: y - reach, y1: y + reach }, (k, px, py) => {
    const uneven = 1 + 0.2 * gradient2(px / 1.1, py / 1.1, seed);
    const d = (Math.hypot(px - x, (py - y) * 1.1) / (2.1 * radius)) * uneven;
    if (d < 1) field.z[k] -= FUNNEL_DEPTH * (1 - d) ** 1.6;
  });
}

/**
 * Shrinkage pipe in the crater of an electrode's end at `x`, its mouth `severity` mm across, usually with a small
 * satellite. Truth: size = mouth diameter of the finished hole below the crater's floor, place = middle of the mouth.
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
      const x = crater.x + place.normal(0, 0.1) * crater.radiusX;
      const y = crater.y + place.normal(0, 0.1) * crater.radiusY;
      const radius = request.severity / 2;
      sinkFunnel(work.strip, x, y, radius, place.seed());
      pipe = drawGasHole(random.child("pipe"), x, y, request.severity, { depth: Math.min(3, 3 * radius), open: true });
      holes.push({ hole: pipe, trace: cutGasHole(work.strip, pipe) });
      if (place.chance(0.7)) {
        const angle = place.uniform(0, 6.28);
        const away = radius * place.uniform(1.9, 2.4);
        const small = drawGasHole(
          random.child("satellite"),
          x + away * Math.cos(angle),
          y + away * Math.sin(angle),
          place.uniform(0.3, 0.5),
          { open: true },
        );
        holes.push({ hole: small, trace: cutGasHole(work.strip, small) });
      }
    },
    paint(work) {
      for (const { hole, trace } of holes) paintGasHole(work.strip, hole, trace);
    },
    measure: (work) => (pipe ? measuredHole(work, request.id, "crater-pipe", pipe) : null),
  };
};
