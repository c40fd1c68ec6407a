import type { Mm } from "../../math";
import type { GaugePlacement } from "../placement";
import { drawCaliper } from "./caliper";
import { drawDepthGauge } from "./depth-gauge";
import { drawLegGauge, drawThroatGauge } from "./in-corner";
import { drawHeightGauge, drawHookGauge } from "./on-feet";
import type { Drawing } from "./shapes";

/**
 * A gauge with its moving part at `position` of its scale, as data in the gauge's own frame; the pose of its seat puts
 * it on the metal. `noise` is what its seating adds to the scale: the part's end is drawn where it is, so that it
 * touches when it reads `stop`.
 */
export function drawGauge(placement: GaugePlacement, position: Mm, noise: Mm): Drawing {
  const end = position - noise;
  switch (placement.kind) {
    case "caliper":
      return drawCaliper(position, end);
    case "height-gauge":
      return drawHeightGauge(placement, position, end);
    case "depth-gauge":
      return drawDepthGauge(placement, position, -end);
    case "hook-gauge":
      return drawHookGauge(placement, position, -end);
    case "fillet-gauge":
      return placement.use === "leg" ? drawLegGauge(position, end) : drawThroatGauge(position, end);
  }
}
