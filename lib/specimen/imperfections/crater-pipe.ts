import type { RandomStream } from "../../random";
import type { Feature, FeatureBuilder } from "../work";
import { craterNear, leaveCraterOpen } from "./crater";
import { measuredHole } from "./measured-hole";
import {
  cutShrinkagePipe,
  drawShrinkagePipe,
  type PipeTrace,
  paintShrinkagePipe,
  type ShrinkagePipe,
} from "./shrinkage-pipe";

/** The pipe lies off the crater's middle by so many of its radii. */
const OFF_MIDDLE = 0.27;
/** Share of the pipes beside which a second, smaller one broke through. */
const SECOND = 0.3;

/** Where a second, smaller pipe tore open beside the first, mm; null for most. */
function drawSecond(random: RandomStream, { x, y, radius }: ShrinkagePipe): ShrinkagePipe | null {
  if (!random.chance(SECOND)) return null;
  const angle = random.uniform(0, 6.28);
  const away = radius * random.uniform(2, 2.9) + 0.2;
  const diameter = Math.min(radius, random.uniform(0.26, 0.55));
  return drawShrinkagePipe(random, x + away * Math.cos(angle), y + away * Math.sin(angle), diameter);
}

/**
 * Shrinkage pipe in the crater of an electrode's end at `x`, its mouth `severity` mm across, sometimes with a smaller one
 * beside it. Truth: size = mouth diameter of the finished hole below the crater's floor, place = middle of the mouth.
 */
export const craterPipe: FeatureBuilder = (request, random): Feature => {
  let main: ShrinkagePipe | null = null;
  const pipes: { pipe: ShrinkagePipe; trace: PipeTrace }[] = [];
  return {
    id: request.id,
    plan: (work) => leaveCraterOpen(work, request, random.child("stop")),
    cut(work) {
      const crater = craterNear(work, request);
      if (!crater) return;
      const place = random.child("place");
      const x = crater.x + place.normal(0, OFF_MIDDLE) * crater.radiusX;
      const y = crater.y + place.normal(0, OFF_MIDDLE) * crater.radiusY;
      main = drawShrinkagePipe(random.child("pipe"), x, y, request.severity);
      const second = drawSecond(random.child("second"), main);
      for (const pipe of second ? [main, second] : [main])
        pipes.push({ pipe, trace: cutShrinkagePipe(work.strip, pipe) });
    },
    paint(work) {
      for (const { pipe, trace } of pipes) paintShrinkagePipe(work.strip, pipe, trace);
    },
    measure: (work) => main && measuredHole(work, request.id, "crater-pipe", main),
  };
};
